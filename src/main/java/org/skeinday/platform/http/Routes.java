package org.skeinday.platform.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** The only way to add a route: each names who may use it, so that one without a role cannot exist. */
public final class Routes {
    /** Largest body of an ordinary request, in bytes. */
    public static final int ORDINARY_BODY = 64 * 1024;

    /** Of a form that strangers may send: a name and a code; a long body would hold a thread as long as it drips. */
    static final int OPEN_BODY = 8 * 1024;

    /** Largest body of an import, in bytes. */
    public static final int IMPORT_BODY = 5 * 1024 * 1024;

    private static final long LARGE_WAITS_S = 20;

    private final Semaphore large = new Semaphore(1, true);
    private final RoutesConfig routes;
    private final Access access;
    private final List<Right> rights = new ArrayList<>();
    private BooleanSupplier quiet = () -> false;

    /**
     * Who may use one route.
     *
     * @param method GET or POST
     * @param minimum least role; null when a device that has not joined may, too
     * @param advice whether it is not served while nobody may be helped
     * @param maxBytes largest body that is read, 0 for none
     */
    public record Right(
            String method, String path, @Nullable Role minimum, boolean advice, int maxBytes) {}

    Routes(RoutesConfig routes, Access access) {
        this.routes = routes;
        this.access = access;
    }

    /** Whether nobody may be helped just now: then nothing that advises is served, and the coach's device writes nothing. */
    public void quietWhile(BooleanSupplier now) {
        quiet = now;
    }

    /** What is noted of each request before it is answered; it must neither fail nor take long. */
    public void beforeEach(Consumer<Context> noted) {
        routes.before(noted::accept);
    }

    /** The router itself, for the test that nothing gets past this list. */
    RoutesConfig beside() {
        return routes;
    }

    /** The rights of every route, in the order in which they were added. */
    public List<Right> rights() {
        return List.copyOf(rights);
    }

    /** A page that advises, forecasts, or shows what others have measured: not served while it is quiet. */
    public void advice(String path, Role minimum, Handler handler) {
        rights.add(new Right("GET", path, minimum, true, 0));
        routes.head(path, guarded(minimum, context -> refuseAdvice()));
        routes.get(path, guarded(minimum, context -> {
            refuseAdvice();
            handler.handle(context);
        }));
    }

    /** For a page that advises in some cases only. */
    public void refuseAdvice() {
        if (quiet.getAsBoolean()) {
            throw Refusal.quiet("Outside help is not allowed just now: this page is served again after that.");
        }
    }

    /** The laptop is not meant: with it alone, a captain runs the day. */
    private void refuseCoach(Context context) {
        Caller caller = Access.callerOf(context);
        if (caller.role() == Role.COACH && !caller.isLaptop() && quiet.getAsBoolean()) {
            throw Refusal.quiet(
                    "Outside help is not allowed from the call to the sign-off: the coach's device writes nothing.");
        }
    }

    /** A page or fragment: changes nothing. */
    public void get(String path, Role minimum, Handler handler) {
        rights.add(new Right("GET", path, minimum, false, 0));
        routes.head(path, guarded(minimum, context -> {})); // without this one the router says yes to everybody
        routes.get(path, guarded(minimum, handler));
    }

    public void post(String path, Role minimum, Handler handler) {
        post(path, minimum, ORDINARY_BODY, handler);
    }

    /** @param maxBytes largest body that is read, at most {@link #IMPORT_BODY} */
    public void post(String path, Role minimum, int maxBytes, Handler handler) {
        rights.add(new Right("POST", path, minimum, false, maxBytes));
        routes.post(path, context -> {
            BodyLimit.check(context, maxBytes);
            access.require(context, minimum);
            refuseCoach(context);
            if (maxBytes <= ORDINARY_BODY) {
                handler.handle(context);
            } else {
                oneByOne(context, handler);
            }
        });
    }

    /**
     * A large file unfolds to many times its size: several at once would take all memory from everybody. Who may not send
     * one was refused before, and it is here whole before its turn comes: a slow sender keeps nobody waiting.
     */
    private void oneByOne(Context context, Handler handler) throws Exception {
        Uploads.await(context);
        if (!large.tryAcquire(LARGE_WAITS_S, TimeUnit.SECONDS)) {
            throw new Refusal(503, "Another large file is being looked through. Send this one again in a moment.");
        }
        try {
            SpareMemory.require(context.contentLength());
            handler.handle(context);
        } finally {
            large.release();
        }
    }

    /** A form with files. They are looked at as files after the role was: whoever may not send them has none read. */
    public void postFiles(String path, Role minimum, Handler handler) {
        post(path, minimum, IMPORT_BODY, context -> {
            Uploads.check(context);
            handler.handle(context);
        });
    }

    /** What a device keeps for itself, such as its light: nothing of the record changes, so it may while it is quiet. */
    public void ofDevice(String path, Role minimum, Handler handler) {
        rights.add(new Right("POST", path, minimum, false, ORDINARY_BODY));
        Handler guarded = guarded(minimum, handler);
        routes.post(path, context -> {
            BodyLimit.check(context, ORDINARY_BODY);
            guarded.handle(context);
        });
    }

    /** For a device that has not joined: the join page and the files that it needs. */
    public void openGet(String path, Handler handler) {
        rights.add(new Right("GET", path, null, false, 0));
        routes.get(path, handler);
    }

    /** For a device that has not joined: the join form. */
    public void openPost(String path, Handler handler) {
        rights.add(new Right("POST", path, null, false, OPEN_BODY));
        routes.post(path, context -> {
            BodyLimit.check(context, OPEN_BODY);
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
