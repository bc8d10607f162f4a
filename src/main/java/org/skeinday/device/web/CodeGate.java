package org.skeinday.device.web;

import java.time.Clock;
import org.skeinday.device.JoinCode;
import org.skeinday.device.TypedCode;

/**
 * What the join link, the typed code and the code of the day open. Typed ones can be guessed, so wrong tries are slowed, per
 * address and over all devices together, strangers apart from those who have joined or bring the right link, each of the two codes with a count of its own: who knows the code on the wall does
 * not get his wrong tries at the code of the day forgotten by typing it.
 */
final class CodeGate {
    /** What a code opens; each covers those before it. */
    enum Opens {
        NOTHING,
        /** Viewer and helper. */
        DOOR,
        /** Timekeeper and captain as well. */
        WATCHES
    }

    /** @param problem what is wrong with what was typed; empty when right, or when only a right link came */
    record Found(Opens opens, String problem) {}

    /** The longest wait, 32 s: who guesses keeps others waiting no longer, and tries about 1,100 of 113 million in a day. */
    private static final int MOST_DOUBLINGS = 4;

    private static final String OTHER_LINK = "This link is not from this day's join code: scan it again.";
    private static final String NO_CODE = "Type the code that stands on the laptop's page Join, or scan what is there.";
    private static final String WRONG = "That is neither the code on the laptop's page Join nor one that the coach has"
            + " handed out today. A code has six letters and digits.";

    private final JoinCodes codes;
    private final PinGate atDoor;
    private final PinGate ofDay;

    CodeGate(JoinCodes codes, Clock clock) {
        this.codes = codes;
        this.atDoor = new PinGate(typed -> isRight(typed, codes.typed()), clock, WRONG, MOST_DOUBLINGS);
        this.ofDay = new PinGate(
                typed -> codes.ofDay().filter(code -> isRight(typed, code)).isPresent(), clock, WRONG, MOST_DOUBLINGS);
    }

    /**
     * What both together open.
     *
     * @param from address of the request
     * @param joined whether it comes from a device that has joined
     * @param link what came behind the # of the link, empty for none
     * @param typed empty when nothing was typed
     */
    Found ask(String from, boolean joined, String link, String typed) {
        boolean linkRight = codes.link().fits(link);
        if (typed.isBlank()) {
            return linkRight
                    ? new Found(Opens.DOOR, "")
                    : new Found(Opens.NOTHING, link.isEmpty() ? NO_CODE : OTHER_LINK);
        }
        Found found = ofTyped(from, joined || linkRight, typed);
        return linkRight && found.opens() == Opens.NOTHING ? new Found(Opens.DOOR, found.problem()) : found;
    }

    /** Each wrong try counts at both codes: what is no answer at one must not be a free guess at the other. */
    private synchronized Found ofTyped(String from, boolean known, String typed) {
        boolean notLookedAt = atDoor.keepsWaiting(from, known);
        String problem = atDoor.problem(from, known, typed);
        if (problem.isEmpty()) {
            return new Found(Opens.DOOR, "");
        }
        if (notLookedAt) {
            return new Found(Opens.NOTHING, problem);
        }
        String problemOfDay = ofDay.problem(from, known, typed);
        if (problemOfDay.isEmpty()) {
            atDoor.forgive(from, known);
            return new Found(Opens.WATCHES, "");
        }
        return new Found(Opens.NOTHING, problemOfDay);
    }

    private static boolean isRight(String typed, String code) {
        return TypedCode.read(typed).filter(read -> isSame(read, code)).isPresent();
    }

    /** In a time that does not tell how much of it was right; nothing is the same as an empty secret. */
    private static boolean isSame(String one, String secret) {
        return !secret.isEmpty() && JoinCode.isSame(one, secret);
    }
}
