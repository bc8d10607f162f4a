package org.skeinday.hall.web;

import io.javalin.http.Context;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.Routes;
import org.skeinday.units.UnitSystem;

/**
 * The team's units, as every page, phone and paper has them. They are noted at the door of each request: who renders asks
 * no more. It is here since the hall is the first room whose pages show lengths.
 */
public final class ReaderUnits {
    private static final String ATTRIBUTE = "units";

    private ReaderUnits() {}

    /** @param team the units that the record has now; asked at each request */
    public static void register(Routes routes, Supplier<UnitSystem> team) {
        routes.beforeEach(context -> context.attribute(ATTRIBUTE, team.get()));
    }

    public static UnitSystem of(Context context) {
        @Nullable UnitSystem noted = context.attribute(ATTRIBUTE);
        return noted == null ? UnitSystem.METRIC : noted;
    }
}
