package org.skeinday.platform.http;

import io.javalin.http.Context;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Who a request comes from, and whether that is enough. */
public final class Access {
    /** Name of the cookie that carries a device's token. */
    public static final String COOKIE = "skeinday";

    static final String ATTRIBUTE = "skeinday.caller";
    private final Callers callers;

    Access(Callers callers) {
        this.callers = callers;
    }

    /** Who asked, on a route that names a role; refuses when nobody is known. */
    public static Caller callerOf(Context context) {
        @Nullable Caller caller = context.attribute(ATTRIBUTE);
        if (caller == null) {
            throw Refusal.notJoined();
        }
        return caller;
    }

    /** Whether the request comes from the laptop, a device that has joined, or a spectator. */
    public static boolean isKnown(Context context) {
        return context.attribute(ATTRIBUTE) != null;
    }

    /** The device that asked, when it has joined; empty for the laptop itself, for spectators and for strangers. */
    public static Optional<Caller> joined(Context context) {
        @Nullable Caller caller = context.attribute(ATTRIBUTE);
        return Optional.ofNullable(caller).filter(c -> !c.isLaptop() && !c.isSpectator());
    }

    void require(Context context, Role minimum) {
        Caller caller = callerOf(context); // found at the door, once for each request
        if (!caller.role().covers(minimum)) {
            throw Refusal.roleTooLow(minimum, caller.role());
        }
    }

    /** Notes the caller on the request, when known: pages that need no role greet them too. */
    Optional<Caller> find(Context context) {
        boolean onLaptop = fromThisMachine(context.req().getRemoteAddr());
        if (!onLaptop) {
            callers.heard(context.req().getRemoteAddr());
        }
        @Nullable String token = context.cookie(COOKIE);
        Optional<Caller> joined = token == null ? Optional.empty() : callers.ofToken(token);
        Optional<Caller> caller = joined.or(() -> onLaptop ? Optional.of(callers.laptop()) : Optional.empty());
        caller.ifPresent(known -> context.attribute(ATTRIBUTE, known));
        return caller;
    }

    /** Whether a request comes from the machine that runs the server. */
    public static boolean onThisMachine(Context context) {
        return fromThisMachine(context.req().getRemoteAddr());
    }

    /** Whether this address of a request is the machine's own. */
    public static boolean fromThisMachine(String address) {
        return address.startsWith("127.")
                || address.equals("0:0:0:0:0:0:0:1")
                || address.equals("[0:0:0:0:0:0:0:1]")
                || address.equals("::1");
    }
}
