package org.skeinday.platform.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;

/** The only way to add a route: each names who may use it, so that one without a role cannot exist. */
public final class Routes {
    /** Largest body of an ordinary request, in bytes. */
    public static final int ORDINARY_BODY = 64 * 1024;
    /** Largest body of an import, in bytes. */
    public static final int IMPORT_BODY = 5 * 1024 * 1024;

    private final RoutesConfig routes;
    private final Access access;

    Routes(RoutesConfig routes, Access access) {
        this.routes = routes;
        this.access = access;
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
        Handler guarded = guarded(minimum, handler);
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
