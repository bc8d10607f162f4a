package org.skeinday.attempt;

import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptPhase.Name;
import org.skeinday.contest.DayKind;

/** The one place that says a phase in words, and what can be done in it: pages, files of the wall and refusals. */
public final class PhaseWords {
    /** Elsewhere, from the official's word until the first turn. */
    static final String WINDOW_OPEN = "window open";

    private PhaseWords() {}

    /** As a state: next, called, winding, winding, 2nd, holding, in the air, landed, announced … */
    public static String of(LiveAttempt attempt) {
        AttemptPhase phase = attempt.phase();
        if (phase.name() == Name.WINDING) {
            return winding(attempt.wind());
        }
        if (attempt.waitsInWindow()) {
            return WINDOW_OPEN;
        }
        return isProvisional(phase) ? "provisional" : bare(phase.name(), attempt.day());
    }

    /** What a form showed before: of that moment the state alone is known, of the attempt the kind of day. */
    static String was(State then, LiveAttempt attempt) {
        return bare(
                switch (then) {
                    case PLANNED -> Name.NEXT;
                    case CALLED -> Name.CALLED;
                    case WINDING -> Name.WINDING;
                    case HOLDING -> Name.HOLDING;
                    case RELEASED -> Name.IN_THE_AIR;
                    case LANDED -> Name.LANDED;
                    case CLOSED -> Name.OFFICIAL;
                    case SCRUBBED -> Name.ABANDONED;
                    case VOID -> Name.VOID;
                },
                attempt.day());
    }

    /** A phase without what is special about one attempt. */
    static String bare(Name phase, DayKind day) {
        return switch (phase) {
            case NEXT -> "next";
            case CALLED -> "called";
            case WINDING -> "winding";
            case HOLDING -> "holding";
            case IN_THE_AIR -> "in the air";
            case LANDED -> "landed";
            case OFFICIAL ->
                switch (day) {
                    case PRACTICE -> "logged";
                    case VISITING -> "announced";
                    case HOSTING -> "signed";
                };
            case BROKE -> "broke";
            case RUN_BACK -> "to be run back"; // as a motor that was is "run back"
            case ABANDONED -> "abandoned";
            case VOID -> "void";
        };
    }

    /** @param wind which wind of the attempt, from 1 */
    static String winding(int wind) {
        return wind < 2 ? "winding" : "winding, " + ordinal(wind);
    }

    private static boolean isProvisional(AttemptPhase phase) {
        return phase instanceof AttemptPhase.Official official && official.missing() > 0;
    }

    /** For an act in a phase that does not have it: which phase it is, and what can be done. */
    public static String wrongPhase(LiveAttempt attempt, Hands hands) {
        return "This attempt is " + inSentence(attempt) + ". " + whatNow(attempt, hands);
    }

    /** For an act that has to wait until this attempt is over. @param whose entry and attempt */
    public static String stillUnderWay(String whose, LiveAttempt attempt) {
        return whose + " is still " + inSentence(attempt) + ". " + whatNow(attempt, Hands.CAPTAIN);
    }

    private static String whatNow(LiveAttempt attempt, Hands hands) {
        String words = AttemptActs.of(attempt, hands).stream()
                .filter(act -> act != AttemptAct.START_AGAIN) // whether it may say the event's rules
                .filter(act -> act.isOf(attempt.day()))
                .map(act -> act.words(attempt.day()))
                .collect(Collectors.joining(", "));
        if (!words.isEmpty()) {
            return "What can be done now: " + words + ".";
        }
        return AttemptActs.of(attempt).isEmpty()
                ? "Nothing more is done to it."
                : "What can be done now: nothing from here; the captain has the next key.";
    }

    /** After "is": with what it means where the bare phase would not say it. */
    public static String inSentence(LiveAttempt attempt) {
        return switch (attempt.phase().name()) {
            case BROKE -> "stopped: its motor broke";
            case RUN_BACK -> "given up and its motor still has turns on";
            case CALLED ->
                bare(Name.CALLED, attempt.day()) + (attempt.waitsInWindow() ? " and its window is open" : "");
            default -> of(attempt);
        };
    }

    /** 1st, 2nd, 3rd, 11th … */
    public static String ordinal(int n) {
        boolean teen = n % 100 >= 11 && n % 100 <= 13;
        return n + (teen ? "th" : n % 10 == 1 ? "st" : n % 10 == 2 ? "nd" : n % 10 == 3 ? "rd" : "th");
    }
}
