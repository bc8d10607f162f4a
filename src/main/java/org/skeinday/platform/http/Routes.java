package org.skeinday.platform.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** The only way to make a route: with the least role that may use it. What has no route is refused. */
public final class Routes {
    /** Answers a request of a known caller. */
    @FunctionalInterface
    public interface Answering {
        void answer(Context ctx, Caller caller) throws Exception;
    }

    private final RoutesConfig routes;
    private final Access access;

    Routes(RoutesConfig routes, Access access) {
        this.routes = routes;
        this.access = access;
    }

    public void get(String path, Role least, Answering answering) {
        routes.get(path, ctx -> answer(ctx, least, answering));
    }

    public void post(String path, Role least, Answering answering) {
        routes.post(path, ctx -> answer(ctx, least, answering));
    }

    private void answer(Context ctx, Role least, Answering answering) throws Exception {
        Caller caller = access.caller(ctx);
        access.require(caller, least);
        answering.answer(ctx, caller);
    }
}
