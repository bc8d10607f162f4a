package org.skeinday.attempt.web;

import io.javalin.http.Context;
import org.skeinday.platform.http.KeptCookie;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.units.UnitSystem;

/** Each device shows millimetres or inches as its reader likes; the record is the same. */
public final class ReaderUnits {
    private static final String COOKIE = "units";

    private ReaderUnits() {}

    public static void register(Routes routes) {
        routes.post("/units", Role.VIEWER, ReaderUnits::change);
    }

    public static UnitSystem of(Context context) {
        String kept = context.cookie(COOKIE);
        return UnitSystem.ofWord(kept == null ? "" : kept);
    }

    private static void change(Context context) {
        KeptCookie.set(
                context,
                COOKIE,
                UnitSystem.ofWord(NowPages.field(context, "units")).word());
        context.header("HX-Refresh", "true");
        context.status(204);
    }
}
