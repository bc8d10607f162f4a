package org.skeinday.attempt.web;

import io.javalin.http.Context;
import org.skeinday.device.web.PinGate;
import org.skeinday.platform.http.Access;

/** The coach's PIN as a form brings it. It is looked at here and goes nowhere else: acts carry only that it was right. */
public final class GivenPin {
    private GivenPin() {}

    public static boolean isThere(Context ctx) {
        return !NowPages.field(ctx, "pin").isEmpty();
    }

    /** What is wrong with it, in words; empty for the right one and for none. */
    public static String problem(Context ctx, PinGate pins) {
        return isThere(ctx) ? pins.problem(ctx.ip(), Access.joined(ctx).isPresent(), NowPages.field(ctx, "pin")) : "";
    }
}
