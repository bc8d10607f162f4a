package org.skeinday.attempt.action;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.store.FlightStore;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.NotCounted;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TypedFields;
import org.skeinday.units.FlightTime;

/** What a person says of a flight as evidence: that it counts or not, and that a number of it was so. */
public final class FlightWorth {
    public static final String COUNTS = "counts";
    public static final String LEFT_OUT = "left-out";
    /** As {@link #seen} has a flight of which nobody has said anything. */
    public static final String UNDECIDED = "undecided";

    private static final Set<String> TOPICS = Set.of("attempts", "winds", "motors");

    private FlightWorth() {}

    /**
     * Whether a flight counts.
     *
     * @param verdict counts or left-out
     * @param reason why it is left out
     * @param contact time from release to the contact, empty when nobody saw when
     * @param seen how the form showed the flight, as {@link #seen} says it; null where it did not
     */
    public record Decided(
            String flight,
            String verdict,
            String reason,
            String contact,
            @Nullable String seen) {}

    /**
     * Numbers of a flight were so.
     *
     * @param numbers by word of {@link Measured}, as the page showed them
     */
    public record Confirmed(String flight, Map<String, Double> numbers) {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("flight.counts", Decided.class, FlightWorth::decide),
                new ActKind<>("flight.confirm", Confirmed.class, FlightWorth::confirm));
    }

    /** How a flight is judged, so that two who judge at once hear of each other; empty for one that counts. */
    public static String seen(FlightEvidence said) {
        return said.counts().isUndecided() ? UNDECIDED : said.counts().reason();
    }

    /** What somebody else has said of it since the form was shown; empty where that is what it was. */
    static Optional<Decision> saidMeanwhile(Flight flight, @Nullable String seen) {
        String now = seen(flight.said());
        return seen == null || seen.equals(now)
                ? Optional.empty()
                : Optional.of(new Decision.Outdated("Somebody else has judged this flight meanwhile: "
                        + (flight.counts().isYes()
                                ? "it counts"
                                : flight.counts().isUndecided() ? "it is undecided" : "it says nothing, " + now)
                        + ". Look again and decide together."));
    }

    static Decision decide(Tx tx, ActContext context, Decided told) {
        Flight flight = FlownStore.any(tx, told.flight()).orElse(null);
        if (flight == null) {
            return Decision.unknown("There is no such flight in the record; look again");
        }
        Optional<Decision> changed = saidMeanwhile(flight, told.seen());
        if (changed.isPresent()) {
            return changed.get();
        }
        if (!told.verdict().equals(COUNTS) && !told.verdict().equals(LEFT_OUT)) {
            return Decision.refused(
                    "verdict", "A flight counts or is left out, but this said '" + told.verdict() + "'");
        }
        if (told.verdict().equals(COUNTS) && flight.counts().because() == NotCounted.STEERED) {
            return Decision.refused(
                    "verdict",
                    "It was steered: " + flight.counts().detail()
                            + ". Such a flight says nothing of model and motor; if it was not, correct that in its record");
        }
        var form = new TypedFields();
        String reason = told.verdict().equals(COUNTS) ? "" : reason(form, "reason", told.reason());
        @Nullable Long contact = reason.isEmpty() ? null : contact(form, told.contact());
        if (told.verdict().equals(LEFT_OUT) && reason.isEmpty()) {
            form.wrong("reason", "Say why it is left out: a flight is left out for a reason that all can read");
        }
        return form.refused()
                .orElseGet(() -> new Decision.Decided(judged(tx, context, flight, reason, contact), Map.of(), TOPICS));
    }

    static String reason(TypedFields form, String field, String typed) {
        String reason = typed.strip();
        if (reason.length() > AttemptActions.LONGEST_REASON) {
            form.wrong(field, AttemptActions.tooLong(reason));
        }
        return reason;
    }

    static @Nullable Long contact(TypedFields form, String typed) {
        return form.read(
                "contact", typed, t -> t.isEmpty() ? null : FlightTime.parse(t).millis());
    }

    /** What was said, and who said it. @param reason empty when it counts @param contactMs null for what the marks say */
    static List<Fact> judged(Tx tx, ActContext context, Flight flight, String reason, @Nullable Long contactMs) {
        List<Fact> facts = new ArrayList<>();
        if (flight.isAttempt()) {
            if (saysMore(flight, reason, contactMs)) {
                facts.add(Fact.of("attempt.judged", said(flight, reason, contactMs)));
            }
        } else {
            PracticeFlown practice = FlightStore.find(tx, flight.id()).orElseThrow();
            facts.add(Fact.of("flight.changed", reason.isEmpty() ? practice.takenIn() : practice.leftOut(reason)));
        }
        facts.add(mark(context, flight, Measured.FLIGHT));
        return facts;
    }

    private static FlightJudged said(Flight flight, String reason, @Nullable Long contactMs) {
        Duration marked = flight.said().contact();
        @Nullable Long at = contactMs != null || marked == null ? contactMs : (Long) marked.toMillis();
        return FlightJudged.knowing(
                flight.said().contacts(), flight.id(), reason.isEmpty() ? null : reason, reason.isEmpty() ? null : at);
    }

    /**
     * Whether this is a word about the flight beyond what is said of it already: a form that was sent back as it was shown,
     * and one that says nothing of a flight that touched nothing, judge nothing.
     */
    static boolean saysMore(Flight flight, String reason, @Nullable Long contactMs) {
        if (reason.isEmpty()) {
            return flight.counts().isUndecided() || flight.counts().because() == NotCounted.LEFT_OUT;
        }
        Duration known = flight.said().contact();
        boolean sameContact = contactMs == null || (known != null && isShown(known, contactMs));
        return !reason.equals(flight.counts().reason()) || !sameContact;
    }

    /** Whether a form that shows whole seconds, or hundredths, shows this moment so. */
    private static boolean isShown(Duration known, long typedMs) {
        var time = new FlightTime(known.toMillis());
        return typedMs == known.toMillis()
                || typedMs == FlightTime.parse(time.text(0)).millis()
                || typedMs == FlightTime.parse(time.text(2)).millis();
    }

    /**
     * Numbers as a form sends them back.
     *
     * @param sent for example {@code launch-torque=3.5}
     * @throws IllegalArgumentException for what is no number of a flight
     */
    public static Map<String, Double> numbers(List<String> sent) {
        Map<String, Double> numbers = new LinkedHashMap<>();
        for (String one : sent) {
            String[] parts = one.split("=", 2);
            Measured what = Measured.of(parts[0]);
            numbers.put(what.word(), parts.length == 2 ? Double.valueOf(parts[1]) : Double.NaN);
        }
        return numbers;
    }

    static Decision confirm(Tx tx, ActContext context, Confirmed told) {
        Flight flight = FlownStore.any(tx, told.flight()).orElse(null);
        if (flight == null) {
            return Decision.unknown("There is no such flight in the record; look again");
        }
        Map<Measured, Double> numbers = new EnumMap<>(Measured.class);
        told.numbers().forEach((word, number) -> numbers.put(Measured.of(word), number));
        for (Map.Entry<Measured, Double> seen : numbers.entrySet()) {
            if (!seen.getValue().equals(flight.number(seen.getKey()))) {
                return new Decision.Outdated(
                        "Somebody has corrected the " + seen.getKey().words()
                                + " of this flight meanwhile. Look again, and confirm what stands there.");
            }
        }
        if (numbers.isEmpty()) {
            return Decision.refused("Nothing of this flight waits to be confirmed");
        }
        List<Fact> facts = Stream.concat(numbers.keySet().stream(), against(flight, numbers.keySet()))
                .map(what -> mark(context, flight, what))
                .toList();
        return new Decision.Decided(facts, Map.of(), TOPICS);
    }

    /** Numbers that are doubted only as they contradict one that was so; what a form only proposed stays offered. */
    private static Stream<Measured> against(Flight flight, Set<Measured> so) {
        return flight.said().doubted().stream()
                .filter(doubt -> so.stream().anyMatch(what -> doubt.concerns(what) && isDoubted(flight, what)))
                .flatMap(doubt -> doubt.why().numbers().stream())
                .filter(what -> !so.contains(what) && isDoubted(flight, what))
                .distinct();
    }

    private static boolean isDoubted(Flight flight, Measured what) {
        return flight.said().measured(what, flight.number(what)).because() == NotCounted.DOUBTED;
    }

    private static Fact mark(ActContext context, Flight flight, Measured what) {
        Double number = flight.number(what);
        return Fact.of(
                "flight.marked",
                new ValueMarked(
                        flight.id(),
                        what.word(),
                        number,
                        flight.said().marks().source(what, number).word(),
                        true,
                        context.personOrNull(),
                        context.now().toEpochMilli()));
    }
}
