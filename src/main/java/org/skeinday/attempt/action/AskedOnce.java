package org.skeinday.attempt.action;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.store.FlightDoubts;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Unlikely;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Decision;
import org.skeinday.units.EnumWords;
import org.skeinday.units.FlightTime;

/**
 * Unlikely numbers are asked about once, where they are typed. What somebody insists upon is taken, and stays outside fits
 * until it is confirmed: that follows from the number itself, whichever way it came.
 */
public final class AskedOnce {
    /** Beside which a form offers to insist; its message names what is insisted upon. */
    public static final String FIELD = "insist";

    private AskedOnce() {}

    /**
     * What is to be asked before the flight is taken as told; empty when nothing is.
     *
     * @param before how it stands, null when it is new: what was insisted upon then is not asked again
     * @param insisted codes of doubts, parted by spaces, as {@link #FIELD} named them; null or empty for none
     * @param fields the form's name of each number
     */
    public static Optional<Decision> about(
            Tx tx, Flight told, @Nullable Flight before, @Nullable String insisted, Function<Measured, String> fields) {
        return about(doubts(tx, told, before), insisted, fields);
    }

    /** What is to be asked of a flight's time alone. @param field of the form that it is typed in */
    static Optional<Decision> aboutTime(
            Tx tx, String attempt, FlightTime time, @Nullable String insisted, String field) {
        List<Doubted> asked = FlownStore.find(tx, attempt).stream()
                .flatMap(flight -> doubts(tx, flight.with(Measured.TIME, (double) time.millis()), flight).stream())
                .filter(doubt -> doubt.about() == Measured.TIME)
                .toList();
        return about(asked, insisted, what -> field);
    }

    /** The same of doubts that are known. */
    public static Optional<Decision> about(
            List<Doubted> asked, @Nullable String insisted, Function<Measured, String> fields) {
        List<String> known = insisted == null ? List.of() : Arrays.asList(insisted.split("[ ,]+", -1));
        if (asked.stream().allMatch(doubt -> known.contains(EnumWords.of(doubt.why())))) {
            return Optional.empty();
        }
        Map<String, String> wrong = new LinkedHashMap<>();
        asked.forEach(doubt -> wrong.putIfAbsent(fields.apply(doubt.about()), doubt.words()));
        String words = String.join(". ", wrong.values());
        wrong.put(FIELD, asked.stream().map(doubt -> EnumWords.of(doubt.why())).collect(Collectors.joining(" ")));
        return Optional.of(new Decision.Refused(words + ". Correct it, or say that it is so", wrong));
    }

    /** What is doubtful of a flight as told and was not before. @param before how it stands, null when it is new */
    public static List<Doubted> doubts(Tx tx, Flight told, @Nullable Flight before) {
        String model = told.modelId();
        List<Flight> others = model == null
                ? List.of()
                : FlownStore.ofModel(tx, model).stream()
                        .filter(f -> !f.id().equals(told.id()))
                        .toList();
        var doubts = new FlightDoubts(tx);
        List<Unlikely> were = before == null
                ? List.of()
                : doubts.of(before, others).stream().map(Doubted::why).toList();
        return doubts.of(told, others).stream()
                .filter(doubt -> !(were.contains(doubt.why())
                        && doubt.why().numbers().stream().allMatch(what -> same(told, before, what))))
                .toList();
    }

    private static boolean same(Flight told, @Nullable Flight before, Measured what) {
        return before != null && Objects.equals(told.number(what), before.number(what));
    }
}
