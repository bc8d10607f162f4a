package org.skeinday.platform.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.function.BooleanSupplier;

/** The only way to add a route: each names who may use it, so that one without a role cannot exist. */
public final class Routes {
    /** Largest body of an ordinary request, in bytes. */
    public static final int ORDINARY_BODY = 64 * 1024;
    /** Largest body of an import, in bytes. */
    public static final int IMPORT_BODY = 5 * 1024 * 1024;

    private final RoutesConfig routes;
    private final Access access;
    private BooleanSupplier quiet = () -> false;

    Routes(RoutesConfig routes, Access access) {
        this.routes = routes;
        this.access = access;
    }

    /** Whether nobody may be helped just now: then nothing that advises is served, and the coach's device writes nothing. */
    public void quietWhile(BooleanSupplier now) {
        quiet = now;
    }

    /** A page that advises, forecasts, or shows what others have measured: not served while it is quiet. */
    public void advice(String path, Role minimum, Handler handler) {
        get(path, minimum, context -> {
            refuseAdvice();
            handler.handle(context);
        });
    }

    /** For a page that advises in some cases only. */
    public void refuseAdvice() {
        if (quiet.getAsBoolean()) {
            throw new Refusal(
                    403, "Outside help is not allowed just now: this page is served again when the attempt is closed.");
        }
    }

    /** The laptop is not meant: with it alone, a captain runs the day. */
    private void refuseCoach(Context context) {
        Caller caller = Access.callerOf(context);
        if (caller.role() == Role.COACH && !caller.isLaptop() && quiet.getAsBoolean()) {
            throw new Refusal(
                    403,
                    "Outside help is not allowed from the call to the sign-off: the coach's device writes nothing.");
        }
    }

    /** A page or fragment: changes nothing. */
    public void get(String path, Role minimum, Handler handler) {
        routes.get(path, guarded(minimum, handler));
    }

    public void post(String path, Role minimum, Handler handler) {
        post(path, minimum, ORDINARY_BODY, handler);
    }

    /** @param maxBytes largest body that is read, at most {@link #IMPORT_BODY} */
    public void post(String path, Role minimum, int maxBytes, Handler handler) {
        Handler guarded = guarded(minimum, context -> {
            refuseCoach(context);
            handler.handle(context);
        });
        routes.post(path, context -> {
            BodyLimit.check(context, maxBytes);
            guarded.handle(context);
        });
    }

    /** For a device that has not joined: the join page and the files that it needs. */
    public void openGet(String path, Handler handler) {
        routes.get(path, handler);
    }

    /** For a device that has not joined: the join form. */
    public void openPost(String path, Handler handler) {
        routes.post(path, context -> {
            BodyLimit.check(context, ORDINARY_BODY);
            handler.handle(context);
        });
    }

    private Handler guarded(Role minimum, Handler handler) {
        return context -> {
            access.require(context, minimum);
            handler.handle(context);
        };
    }
}
