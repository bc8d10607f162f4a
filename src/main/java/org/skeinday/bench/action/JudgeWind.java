package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindJudged;
import org.skeinday.winding.store.WindStore;
import org.skeinday.winding.store.WindWorth;

/** What a person says of a wind of which something is asked: all of it was so, or it is left out; and in again. */
public final class JudgeWind {
    public static final String SO = "so";
    public static final String LEFT_OUT = "left-out";
    public static final String COUNTS = "counts";

    private static final int LONGEST_REASON = 400;

    /**
     * One word about a wind.
     *
     * @param verdict so, left-out or counts
     * @param reason why it is left out
     * @param seen what the form showed of it, as {@link #seen} says it; null where it did not
     */
    record Told(
            String wind,
            String verdict,
            @Nullable String reason,
            @Nullable String seen) {}

    private JudgeWind() {}

    static ActKind<?> kind() {
        return new ActKind<>("wind.judge", Told.class, JudgeWind::decide);
    }

    /** What is asked and said of a wind now, so that a form that stood open answers nothing else. */
    public static String seen(Wind wind, WindWorth worth) {
        WindCounted counted = wind.counted();
        return (counted == null ? "" : counted.stopCrankTurns())
                + (worth.count(wind).isPresent() ? "?" : "")
                + " " + worth.openReadings(wind).size()
                + " " + worth.leftOut(wind);
    }

    static Decision decide(Tx tx, ActContext context, Told told) {
        Wind wind = WindStore.find(tx, told.wind()).orElse(null);
        if (wind == null) {
            return Decision.unknown("There is no such wind; look again");
        }
        var worth = new WindWorth(tx);
        if (told.seen() != null && !told.seen().equals(seen(wind, worth))) {
            return new Decision.Outdated("Somebody has corrected or judged this wind meanwhile: "
                    + worth.readings(wind).words() + ". Look again, and judge what stands there.");
        }
        return switch (told.verdict()) {
            case SO -> so(tx, context, wind, worth);
            case LEFT_OUT ->
                leftOut(
                        context,
                        wind,
                        told.reason() == null ? "" : told.reason().strip());
            case COUNTS -> judged(context, wind, null);
            default ->
                Decision.refused(
                        "verdict", "A wind was so, is left out or counts, but this said '" + told.verdict() + "'");
        };
    }

    private static Decision leftOut(ActContext context, Wind wind, String reason) {
        if (reason.isEmpty()) {
            return Decision.refused(
                    "reason", "Say why it is left out: a wind is left out for a reason that all can read");
        }
        return reason.length() > LONGEST_REASON
                ? Decision.refused("reason", "A reason has at most 400 characters, this one has " + reason.length())
                : judged(context, wind, reason);
    }

    private static Decision judged(ActContext context, Wind wind, @Nullable String reason) {
        var fact = new WindJudged(
                wind.begun().id(), reason, context.personOrNull(), context.now().toEpochMilli());
        return Decision.decided(WindActions.TOPICS, Fact.of("wind.judged", fact));
    }

    private static Decision so(Tx tx, ActContext context, Wind wind, WindWorth worth) {
        List<Fact> facts = new ArrayList<>();
        worth.openReadings(wind)
                .forEach(doubt -> facts.add(Fact.of(
                        "wind.confirmed",
                        new WindConfirmed(doubt.markId(), wind.begun().id()))));
        WindCounted counted = wind.counted();
        if (counted != null && worth.count(wind).isPresent()) {
            double turns = counted.stopCrankTurns();
            Stream.concat(Stream.of(wind.begun().id()), flight(tx, wind, turns).stream())
                    .forEach(of -> facts.add(mark(context, of, turns)));
        }
        return facts.isEmpty()
                ? Decision.refused("Nothing of this wind waits to be confirmed")
                : new Decision.Decided(facts, Map.of(), WindActions.TOPICS);
    }

    /** The flight that says the same number. */
    private static Optional<String> flight(Tx tx, Wind wind, double turns) {
        return Optional.ofNullable(wind.begun().attemptId())
                .flatMap(id -> FlownStore.find(tx, id))
                .filter(f -> f.stopCrankTurns() != null && f.stopCrankTurns() == turns)
                .map(f -> f.id());
    }

    private static Fact mark(ActContext context, String of, double turns) {
        return Fact.of(
                "flight.marked",
                new ValueMarked(
                        of,
                        Measured.CRANK_TURNS.word(),
                        turns,
                        Source.TYPED.word(),
                        true,
                        context.personOrNull(),
                        context.now().toEpochMilli()));
    }
}
