package org.skeinday.evidence;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Where the values of one flight came from and which were confirmed. A value of which nothing was said came as the flight
 * did, and a flight of which nothing was said was typed, as records and files of before have it.
 */
public final class ValueMarks {
    public static final ValueMarks NONE = new ValueMarks(Map.of());

    private final Map<Measured, ValueMarked> marks;

    private ValueMarks(Map<Measured, ValueMarked> marks) {
        this.marks = marks;
    }

    /** @param ofOneFlight of several about one value the last holds */
    public static ValueMarks of(List<ValueMarked> ofOneFlight) {
        Map<Measured, ValueMarked> marks = new EnumMap<>(Measured.class);
        ofOneFlight.forEach(mark -> marks.put(mark.about(), mark));
        return marks.isEmpty() ? NONE : new ValueMarks(marks);
    }

    /** Of several flights, by flight; who has none is not there. @param all those of one flight in their order */
    public static Map<String, ValueMarks> byFlight(List<ValueMarked> all) {
        return all.stream()
                .collect(Collectors.groupingBy(
                        ValueMarked::flightId, Collectors.collectingAndThen(Collectors.toList(), ValueMarks::of)));
    }

    /** The same where nothing was said of how the flight itself came. */
    public ValueMarks cameAs(Source source) {
        return cameAs(Measured.FLIGHT, null, source);
    }

    /** The same where nothing was said of how this number came. @param number null for the flight itself */
    public ValueMarks cameAs(Measured what, @Nullable Double number, Source source) {
        if (of(what, number).isPresent()) {
            return this;
        }
        Map<Measured, ValueMarked> more = new EnumMap<>(Measured.class);
        more.putAll(marks);
        more.put(what, new ValueMarked("of it", what.word(), number, source.word(), false, null, null));
        return new ValueMarks(more);
    }

    /** What was said of this number; empty when it is another than that which was marked. */
    public Optional<ValueMarked> of(Measured what, @Nullable Double number) {
        return Optional.ofNullable(marks.get(what))
                .filter(mark -> number == null ? mark.number() == null : number.equals(mark.number()));
    }

    /** What was said of the flight itself. */
    public Optional<ValueMarked> flight() {
        return of(Measured.FLIGHT, null);
    }

    public Source source(Measured what, @Nullable Double number) {
        return of(what, number).or(this::flight).map(ValueMarked::from).orElse(Source.TYPED);
    }

    /**
     * Where all of a flight came from, for example {@code typed; launch torque tapped}.
     *
     * @param number of each thing that was measured, null where it is not known
     */
    public String cameFrom(Function<Measured, @Nullable Double> number) {
        Source row = source(Measured.FLIGHT, null);
        StringBuilder words = new StringBuilder(row.words());
        for (Measured what : Measured.values()) {
            Double told = number.apply(what);
            boolean confirmed = told != null && isConfirmed(what, told);
            if (told != null && (confirmed || source(what, told) != row)) {
                words.append("; ")
                        .append(what.words())
                        .append(' ')
                        .append(source(what, told).words())
                        .append(confirmed ? " and confirmed" : "");
            }
        }
        return words.toString();
    }

    /** Whether a form proposed this number and nobody said that it was so. */
    public boolean isOffered(Measured what, @Nullable Double number) {
        return of(what, number)
                .filter(mark -> mark.from() == Source.OFFERED && !mark.confirmed())
                .isPresent();
    }

    /** Whether this number came in as asked about and nobody has said that it was so. */
    public boolean isAsked(Measured what, @Nullable Double number) {
        return of(what, number).filter(ValueMarked::isAsked).isPresent();
    }

    /** Whether somebody said that this number was so. */
    public boolean isConfirmed(Measured what, @Nullable Double number) {
        return of(what, number).filter(ValueMarked::confirmed).isPresent();
    }
}
