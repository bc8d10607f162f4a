package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.AttemptActions;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.evidence.Measured;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.units.Torque;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindJudged;
import org.skeinday.winding.store.CountedTurns;
import org.skeinday.winding.store.WindStore;
import org.skeinday.winding.store.WindWorth;

/** What a person says of a wind of which something is asked: all of it was so, or it is left out; and in again. */
public final class JudgeWind {
    public static final String SO = "so";
    public static final String LEFT_OUT = "left-out";
    public static final String COUNTS = "counts";

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
                + " " + worth.askedReadings(wind).size()
                + (worth.offered(wind).isEmpty() ? "" : " " + worth.offered(wind))
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
        return AttemptActions.wrongWords(
                        "reason", reason, "Say why it is left out: a wind is left out for a reason that all can read")
                .orElseGet(() -> judged(context, wind, reason));
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
        if (worth.isAboveBand(wind)) {
            Double peak = wind.peakTorque().map(Torque::newtonMillimetres).orElse(null);
            facts.add(Confirms.mark(tx, context, wind.begun().id(), Measured.PEAK_TORQUE, peak));
        }
        Set<Measured> numbers = new HashSet<>(worth.offered(wind));
        worth.count(wind).ifPresent(doubt -> numbers.add(Measured.CRANK_TURNS));
        CountedTurns.of(wind).forEach((what, turns) -> {
            if (numbers.contains(what)) {
                Stream.concat(Stream.of(wind.begun().id()), flight(tx, wind, what, turns).stream())
                        .forEach(of -> facts.add(Confirms.mark(tx, context, of, what, turns)));
            }
        });
        return facts.isEmpty()
                ? Decision.refused("Nothing of this wind waits to be confirmed")
                : new Decision.Decided(facts, Map.of(), WindActions.TOPICS);
    }

    /** The flight that says the same number. */
    private static Optional<String> flight(Tx tx, Wind wind, Measured what, Double turns) {
        return Optional.ofNullable(wind.begun().attemptId())
                .flatMap(id -> FlownStore.find(tx, id))
                .filter(f -> turns.equals(f.number(what)))
                .map(f -> f.id());
    }
}
