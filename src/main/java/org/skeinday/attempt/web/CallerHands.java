package org.skeinday.attempt.web;

import io.javalin.http.Context;
import org.skeinday.attempt.Hands;
import org.skeinday.platform.http.Access;

/** Whose hands a device's role stands for, where a refusal says what its caller can do. */
final class CallerHands {
    private CallerHands() {}

    /** A helper may have the reader's keys, on the page Winding. */
    static Hands of(Context ctx) {
        return switch (Access.callerOf(ctx).role()) {
            case CAPTAIN, COACH -> Hands.CAPTAIN;
            case TIMEKEEPER -> Hands.TIMEKEEPER;
            case HELPER -> Hands.READER;
            case VIEWER -> Hands.NONE;
        };
    }
}
