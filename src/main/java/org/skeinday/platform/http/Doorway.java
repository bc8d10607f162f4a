package org.skeinday.platform.http;

import io.javalin.http.Context;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** What each request must show before any route sees it, and what each answer carries. */
final class Doorway {
    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; "
            + "img-src 'self' data:; font-src 'self'; media-src 'self'; manifest-src 'self'; connect-src 'self'; "
            + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
    /** What each answer carries, whoever makes it. */
    static final Map<String, String> HEADERS = Map.of(
            "Content-Security-Policy", POLICY,
            "X-Content-Type-Options", "nosniff",
            "Referrer-Policy", "no-referrer",
            "Cache-Control", "no-store");

    private static final Set<String> ALWAYS = Set.of("localhost", "127.0.0.1", "[::1]");

    private final Supplier<Set<String>> names;
    private final IntSupplier port;
    private final @Nullable RequestRate rate;

    Doorway(Supplier<Set<String>> names, IntSupplier port, @Nullable RequestRate rate) {
        this.names = names;
        this.port = port;
        this.rate = rate;
    }

    /** The laptop itself is never kept waiting; a stream ends for good when it is refused, and has a limit of its own. */
    void checkRate(Context context, Optional<Caller> caller) {
        if (rate == null
                || context.path().equals("/live")
                || caller.filter(Caller::isLaptop).isPresent()) {
            return;
        }
        boolean admitted = caller.filter(
                        known -> !known.isSpectator()) // who makes passes by the dozen asks no more for it
                .map(known -> rate.admits(known.device(), RequestRate.DEVICE))
                .orElseGet(() -> rate.admits(context.ip(), RequestRate.STRANGERS));
        if (!admitted) {
            context.header("Retry-After", "1");
            throw new Refusal(429, "This device asks too often just now. It is served again in a second.");
        }
    }

    void check(Context context) {
        HEADERS.forEach(context::header);
        String method = context.req().getMethod();
        if (!Set.of("GET", "HEAD", "POST").contains(method)) {
            throw new Refusal(405, "Only reading and posting are served here.");
        }
        if (!isOwn(context.header("Host"))) {
            throw new Refusal(421, "This server does not answer under that name. Use an address that it shows.");
        }
        if (method.equals("POST")) {
            checkPost(context);
        }
    }

    /** Another site's page cannot set the header, and a browser tells the truth about the origin. */
    private void checkPost(Context context) {
        @Nullable String origin = context.header("Origin");
        boolean ownOrigin = origin != null && origin.startsWith("http://") && isOwn(origin.substring(7));
        boolean ownScript = "true".equals(context.header("HX-Request")) || "1".equals(context.header("X-Skeinday"));
        if (!ownOrigin || !ownScript) {
            throw new Refusal(403, "This was not sent by a page of this server. Posting needs script to be on.");
        }
    }

    private boolean isOwn(@Nullable String hostAndPort) {
        if (hostAndPort == null) {
            return false;
        }
        String asked = hostAndPort.toLowerCase(Locale.ROOT);
        String suffix = ":" + port.getAsInt();
        String name = asked.endsWith(suffix)
                ? asked.substring(0, asked.length() - suffix.length())
                : port.getAsInt() == 80 ? asked : "";
        return ALWAYS.contains(name) || names.get().contains(name);
    }
}
