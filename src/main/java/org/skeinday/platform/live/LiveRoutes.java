package org.skeinday.platform.live;

import io.javalin.http.Context;
import java.time.Clock;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Acts;

/** The addresses that the pages' scripts use. */
public final class LiveRoutes {
    private final Clock clock;

    private LiveRoutes(Clock clock) {
        this.clock = clock;
    }

    public static void register(Routes routes, LiveHub hub, Acts acts, Clock clock, TapRules rules) {
        LiveRoutes own = new LiveRoutes(clock);
        Taps taps = new Taps(acts, rules);
        routes.get("/live", Role.SPECTATOR, hub.handler());
        routes.get("/clock", Role.SPECTATOR, own::clock);
        routes.post("/taps", Role.HELPER, taps::take);
        routes.post("/taps/file", Role.CAPTAIN, taps::takeFile);
    }

    /** Both of the server's instants of the exchange in RFC 5905 §8, epoch ms. */
    private void clock(Context context) {
        long receivedMs = clock.millis();
        context.contentType("application/json");
        context.result("{\"receivedMs\":" + receivedMs + ",\"sentMs\":" + clock.millis() + "}");
    }
}
