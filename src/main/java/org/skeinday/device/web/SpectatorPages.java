package org.skeinday.device.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.function.Supplier;
import org.skeinday.device.SpectatorPass;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.KeptCookie;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Routes;

/** The spectators' address: whoever opens it sees the wall, the result sheet and the order, and joins nothing. */
final class SpectatorPages {
    static final String PATH = "/look/";
    private static final String FIRST = "/results/wall";
    private static final int OWN_DIGITS = 16;

    private final JoinCodes codes;
    private final Supplier<String> randomHex;

    /** @param randomHex 32 fresh random hexadecimal digits each time */
    SpectatorPages(JoinCodes codes, Supplier<String> randomHex) {
        this.codes = codes;
        this.randomHex = randomHex;
    }

    /** What stands behind the laptop's address. */
    static String path(JoinCodes codes) {
        return PATH + SpectatorPass.codeOf(codes.link());
    }

    void register(Routes routes) {
        routes.openGet(PATH + "{code}", this::comeIn);
    }

    /** A device of the crew that scans it stays what it is. */
    private void comeIn(Context context) {
        String code = context.pathParam("code");
        if (!SpectatorPass.fits(codes.link(), code)) {
            throw Refusal.notFound("This is not the spectators' address of this day. Scan it again where it hangs.");
        }
        if (!Access.isKnown(context)) {
            String own = randomHex.get().substring(0, OWN_DIGITS);
            KeptCookie.set(context, Access.COOKIE, new SpectatorPass(code, own).text());
        }
        context.redirect(FIRST, HttpStatus.SEE_OTHER);
    }
}
