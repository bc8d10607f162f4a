package org.skeinday.bench.action;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorParted;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.ToldOfBreak;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.motor.BreakCause;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.store.WindWorth;

/**
 * The coach says why a motor broke: until then no break by accident is a break test. May be said anew at any time, by a
 * form that shows what was said last; and it outweighs whatever anybody saw of where it parted.
 */
public final class JudgeBreak {
    private static final Set<String> TOPICS = Set.of("motors", "attempts", "winds");
    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("HH:mm:ss");
    private static final String NOT_BROKEN = "This motor is not broken: there is nothing to say of its break";

    private final Supplier<Map<String, String>> people;

    /** @param cause a word of {@link BreakCause} @param seen as {@link JudgeBreak#seen} said it; null where none was shown */
    record Judged(String motor, String cause, @Nullable String seen) {}

    /** Turns and torque that were told of a break were so. @param seen as in {@link Judged} */
    record WasSo(String motor, @Nullable String seen) {}

    private JudgeBreak(Supplier<Map<String, String>> people) {
        this.people = people;
    }

    /** @param people the names known now, by person id */
    static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        var judge = new JudgeBreak(people);
        return List.of(
                new ActKind<>("motor.break-judged", Judged.class, judge::decide),
                new ActKind<>("motor.break-so", WasSo.class, judge::wasSo));
    }

    /** What is known of a break and was said of it, so that a form that stood open judges nothing else. */
    public static String seen(Tx tx, MotorStep broke) {
        return broke.cause()
                        .filter(cause -> broke.coachHasSpoken())
                        .map(BreakCause::word)
                        .orElse("")
                + " " + word(tx, broke).map(ValueMarked::atMs).orElse(0L)
                + " " + broke.motorTurns() + " " + broke.torqueNmm();
    }

    /** Who said it, where that is known. */
    private static Optional<ValueMarked> word(Tx tx, MotorStep broke) {
        return EvidenceStore.of(tx, broke.id()).flight();
    }

    Decision decide(Tx tx, ActContext context, Judged judged) {
        MotorStep broke = MotorLifeStore.breakOf(tx, judged.motor()).orElse(null);
        if (broke == null) {
            return Decision.refused("cause", NOT_BROKEN);
        }
        try {
            BreakCause cause = BreakCause.of(judged.cause());
            boolean said = broke.coachHasSpoken()
                    && broke.cause().filter(cause::equals).isPresent();
            if (said) { // two said the same
                return new Decision.Decided(List.of(), Map.of(), TOPICS);
            }
            if (judged.seen() != null && !judged.seen().equals(seen(tx, broke))) {
                return new Decision.Outdated(meanwhile(tx, context, broke));
            }
            MotorStep told = broke.by(cause);
            List<Fact> facts = new ArrayList<>(List.of(Fact.of("motor.step.told", told)));
            facts.add(mark(tx, context, broke, Measured.FLIGHT, null));
            parted(tx, context, told).ifPresent(facts::add);
            return new Decision.Decided(facts, Map.of(), TOPICS);
        } catch (IllegalArgumentException e) {
            return Decision.refused("cause", String.valueOf(e.getMessage()));
        }
    }

    Decision wasSo(Tx tx, ActContext context, WasSo told) {
        MotorStep broke = MotorLifeStore.breakOf(tx, told.motor()).orElse(null);
        if (broke == null) {
            return Decision.refused("cause", NOT_BROKEN);
        }
        if (told.seen() != null && !told.seen().equals(seen(tx, broke))) {
            return new Decision.Outdated(meanwhile(tx, context, broke));
        }
        ToldOfBreak of = new WindWorth(tx).told(broke);
        ValueMarks marks = EvidenceStore.of(tx, broke.id());
        List<Fact> facts = Stream.of(Measured.CRANK_TURNS, Measured.PEAK_TORQUE)
                .filter(what -> !of.open(what, marks).isEmpty())
                .map(what -> mark(tx, context, broke, what, of.number(what)))
                .toList();
        return facts.isEmpty()
                ? Decision.refused("cause", "Nothing of this break waits to be confirmed")
                : new Decision.Decided(facts, Map.of(), TOPICS);
    }

    private String meanwhile(Tx tx, ActContext context, MotorStep broke) {
        String what = broke.cause()
                .filter(cause -> broke.coachHasSpoken())
                .map(BreakCause::words)
                .orElse("its numbers were corrected");
        String who = word(tx, broke)
                .map(word -> name(word) + at(word, context.zone()))
                .orElse("Somebody else");
        return who + " has said of this break meanwhile: " + what + ". Look again and decide together.";
    }

    private String name(ValueMarked word) {
        return Optional.ofNullable(word.confirmedBy())
                .map(id -> people.get().get(id))
                .orElse("Another device");
    }

    private static String at(ValueMarked word, ZoneId zone) {
        Long ms = word.atMs();
        return ms == null
                ? ""
                : ", at " + SECOND.format(Instant.ofEpochMilli(ms).atZone(zone)) + ",";
    }

    /** Who said it, or that a number was so, wherever it came from. */
    private static Fact mark(Tx tx, ActContext context, MotorStep broke, Measured what, @Nullable Double number) {
        return Confirms.mark(tx, context, broke.id(), what, number);
    }

    /** The attempt in which it broke says the same. */
    private static Optional<Fact> parted(Tx tx, ActContext context, MotorStep told) {
        String place = told.parted();
        return place == null
                ? Optional.empty()
                : BreakRecord.attemptBrokenWith(tx, told.motorId())
                        .flatMap(attempt -> LiveAttempts.evidence(tx, attempt))
                        .map(known -> Fact.of(
                                "attempt.parted",
                                new MotorParted(
                                        known.now().id(),
                                        told.motorId(),
                                        place,
                                        known.answerAtMs(
                                                told.motorId(), context.now().toEpochMilli()),
                                        context.personOrNull(),
                                        context.device())));
    }
}
