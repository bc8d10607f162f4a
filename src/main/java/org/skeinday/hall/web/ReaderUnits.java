package org.skeinday.hall.web;

import io.javalin.http.Context;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.KeptCookie;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.units.UnitSystem;

/**
 * Each device shows millimetres or inches as its reader likes; the record is the same. It is here since the hall is the
 * first room whose pages show lengths.
 */
public final class ReaderUnits {
    private static final String COOKIE = "units";

    private ReaderUnits() {}

    public static void register(Routes routes) {
        routes.ofDevice("/units", Role.VIEWER, ReaderUnits::change);
    }

    public static UnitSystem of(Context context) {
        return ofWord(context.cookie(COOKIE));
    }

    private static UnitSystem ofWord(@Nullable String word) {
        return UnitSystem.ofWord(word == null ? "" : word);
    }

    private static void change(Context context) {
        KeptCookie.set(context, COOKIE, ofWord(context.formParam(COOKIE)).word());
        context.header("HX-Refresh", "true");
        context.status(204);
    }
}
