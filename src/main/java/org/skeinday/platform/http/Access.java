package org.skeinday.platform.http;

import io.javalin.http.Context;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.record.Sha;

/** Checks that a request was meant for this server, and finds out who asks. */
final class Access {
    static final String COOKIE = "skeinday";
    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; "
            + "img-src 'self' data:; font-src 'self'; media-src 'self'; manifest-src 'self'; connect-src 'self'; "
            + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private final Callers callers;
    private final Supplier<Set<String>> hosts;

    /** @param hosts the server's own names and addresses, each with its port, lower case */
    Access(Callers callers, Supplier<Set<String>> hosts) {
        this.callers = callers;
        this.hosts = hosts;
    }

    void check(Context ctx) {
        ctx.header("Content-Security-Policy", POLICY);
        ctx.header("X-Content-Type-Options", "nosniff");
        ctx.header("Referrer-Policy", "no-referrer");
        String host = ctx.header("Host");
        if (host == null || !hosts.get().contains(host.toLowerCase(Locale.ROOT))) {
            throw new Problem(
                    421, "Not this address", "This address does not belong to Skeinday. Use the one the laptop shows.");
        }
        switch (ctx.req().getMethod()) {
            case "GET", "HEAD" -> {}
            case "POST" -> checkOrigin(ctx, host);
            default -> throw new Problem(405, "Not possible", "Only reading and sending are possible here.");
        }
    }

    /** A page of another site can make a browser post here; it can set neither this origin nor this header. */
    private static void checkOrigin(Context ctx, String host) {
        String origin = ctx.header("Origin");
        boolean own = ("http://" + host).equalsIgnoreCase(origin);
        boolean marked = "true".equals(ctx.header("HX-Request")) || "1".equals(ctx.header("X-Skeinday"));
        if (!own || !marked) {
            throw new Problem(
                    403,
                    "Not taken",
                    "This was not sent by a page of this server. Open the page again and switch scripts on.");
        }
    }

    Caller caller(Context ctx) {
        String token = ctx.cookie(COOKIE);
        if (token != null && !token.isEmpty()) {
            return callers.ofTokenHash(Sha.hex(token)).orElse(Caller.NOBODY);
        }
        return onLaptop(ctx.req().getRemoteAddr()) ? Caller.LAPTOP : Caller.NOBODY;
    }

    private static boolean onLaptop(@Nullable String address) {
        try {
            return address != null && InetAddress.getByName(address).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }

    void require(Caller caller, Role needed) {
        if (caller.role().covers(needed)) {
            return;
        }
        if (caller.role() == Role.ANYONE) {
            throw new Problem(
                    401, "Not joined", "This device has not joined. Scan the code on the laptop's Join page.");
        }
        throw new Problem(
                403,
                "Not for this device",
                "This needs the role " + needed.word() + "; this device has joined as "
                        + caller.role().word() + ". The captain can let it join anew.");
    }
}
