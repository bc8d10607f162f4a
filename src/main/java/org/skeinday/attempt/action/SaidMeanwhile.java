package org.skeinday.attempt.action;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.LastAct;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/**
 * What is said of an attempt and moves no phase: its torques, its announced time, its people, a hand watch's time. A form shows
 * when that was said last; where somebody has said it anew since, whoever comes second is told so and decides again.
 */
public final class SaidMeanwhile {
    private SaidMeanwhile() {}

    /** The torques that are wanted. @param attempt id */
    public static String torques(String attempt) {
        return attempt + "#aim";
    }

    /** The time of officials elsewhere. @param attempt id */
    public static String announced(String attempt) {
        return attempt + "#announced";
    }

    /** Who does what. @param entry id @param number of the attempt, running */
    public static String hands(String entry, int number) {
        return entry + "#hands-" + number;
    }

    /** A hand watch's time. @param attempt id @param slot of the watch, from 1 */
    public static String watch(String attempt, int slot) {
        return attempt + "#watch-" + slot;
    }

    /** As a form carries it: when it was said last, epoch ms; 0 while nobody did. */
    public static String seen(Tx tx, String about) {
        return String.valueOf(BreakRecord.lastAct(tx, about).map(LastAct::atMs).orElse(0L));
    }

    /** The same of each watch, in order. @param watches how many, 0 for none */
    public static String seenWatches(Tx tx, String attempt, int watches) {
        return IntStream.rangeClosed(1, watches)
                .mapToObj(slot -> seen(tx, watch(attempt, slot)))
                .collect(Collectors.joining(" "));
    }

    /** @param seen what the form showed; null or empty where it showed nothing, which decides as it always did */
    static Optional<Decision> since(Tx tx, String about, @Nullable String seen) {
        return seen == null || seen.isEmpty() || seen.equals(seen(tx, about))
                ? Optional.empty()
                : Optional.of(
                        new Decision.Outdated("Somebody has said something else meanwhile. Look again, then decide."));
    }

    /** Who said it, for whoever comes second. @param said in a few words */
    static Fact told(ActContext context, String about, String said) {
        return PhaseGate.acted(context, about, said);
    }
}
