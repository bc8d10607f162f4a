package org.skeinday.platform.http;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.util.JavalinBindException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.ThreadLimitHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.jspecify.annotations.Nullable;

/** The one web server. */
public final class Server implements AutoCloseable {
    /** A hall's tablets all come back at once: with the default queue a thousand connections took 8 s. */
    private static final int ACCEPT_QUEUE = 2048;

    /** For acts, each of which waits here for the record; what only reads has few threads of its own. */
    private static final int MOST_THREADS = 250;

    private static final int LEAST_THREADS = 8;
    private static final int IDLE_MS = 5_000;
    private static final Duration LOOK_EVERY = Duration.ofSeconds(5);
    private static final Duration HEARS_WITHIN = Duration.ofSeconds(10);
    private static final int GO_AT_ONCE = 25;

    /**
     * Requests of one address that are worked on at once; more of them wait. Bodies that come in drop by drop hold a thread
     * each: an address that sends many of those waits for itself only.
     */
    private static final int THREADS_OF_ONE = 60;

    /** What the router calls around the routes. */
    private static final Set<String> HOOKS = Set.of("BEFORE", "BEFORE_MATCHED", "AFTER", "AFTER_MATCHED");

    private static final String HTMX_VERSION = "2.0.10";

    static { // else Jetty asks the whole management of Java for it: two hundred classes at each start
        System.setProperty("org.eclipse.jetty.util.referencesPerCacheLine", "16");
    }

    private final Javalin javalin;
    private final List<Routes.Right> rights;
    private final ConnectorWatch watch;

    /**
     * What the server is started with.
     *
     * @param host address to listen on, {@code 0.0.0.0} for all
     * @param port 0 for any free one
     * @param names own names and addresses, lower case and without port, beside localhost
     * @param references makes a short number for each unexpected error
     * @param rate how often one device may ask; null for as often as it likes
     */
    public record Settings(
            String host,
            int port,
            Supplier<Set<String>> names,
            Supplier<String> references,
            Pace pace,
            @Nullable RequestRate rate) {
        /** Without a limit of requests. */
        public Settings(String host, int port, Supplier<Set<String>> names, Supplier<String> references, Pace pace) {
            this(host, port, names, references, pace, null);
        }
    }

    private Server(Javalin javalin, List<Routes.Right> rights, ConnectorWatch watch) {
        this.javalin = javalin;
        this.rights = rights;
        this.watch = watch;
    }

    /**
     * Starts listening.
     *
     * @throws PortTaken when another program listens there
     */
    public static Server start(Settings settings, Callers callers, Page page, Consumer<Routes> routes) {
        int[] port = {settings.port()};
        Doorway doorway = new Doorway(settings.names(), () -> port[0], settings.rate());
        Access access = new Access(callers);
        List<Routes.Right> rights = new ArrayList<>();
        Javalin javalin = Javalin.create(c -> {
            quiet(c);
            listen(c, settings);
            c.http.maxRequestSize = Routes.IMPORT_BODY;
            c.routes.before(context -> {
                doorway.check(context);
                doorway.checkRate(context, access.find(context));
                page.noteMoment(context);
            });
            new ErrorPages(page, settings.references()).register(c.routes);
            Routes own = new Routes(c.routes, access);
            own.openGet("/static/<path>", new StaticFiles(HTMX_VERSION)::serve);
            routes.accept(own);
            rights.addAll(own.rights());
        });
        refuseUnguarded(javalin, rights);
        try {
            javalin.start();
        } catch (JavalinBindException e) {
            throw new PortTaken(settings.port(), e);
        }
        port[0] = javalin.port();
        return new Server(
                javalin, List.copyOf(rights), watch(javalin.jettyServer().server(), settings));
    }

    /** What the router knows and our own list does not would be open to everybody. */
    private static void refuseUnguarded(Javalin javalin, List<Routes.Right> rights) {
        Set<String> guarded = rights.stream()
                .map(right -> right.method() + " " + right.path())
                .collect(Collectors.toSet());
        javalin.unsafe.internalRouter.allHttpHandlers().stream()
                .map(parsed -> parsed.endpoint)
                .filter(endpoint -> !HOOKS.contains(endpoint.method.name()))
                .map(endpoint -> endpoint.method.name().replace("HEAD", "GET") + " " + endpoint.path)
                .filter(route -> !guarded.contains(route))
                .findFirst()
                .ifPresent(route -> {
                    throw new IllegalStateException("Each route names its role, but this one does not: " + route);
                });
    }

    /** Who may use each route that is served. */
    public List<Routes.Right> rights() {
        return rights;
    }

    public int port() {
        return javalin.port();
    }

    @Override
    public void close() {
        watch.close();
        javalin.stop();
    }

    private static void quiet(JavalinConfig c) {
        c.startup.showJavalinBanner = false;
        c.startup.showOldJavalinVersionWarning = false;
        c.startup.startupWatcherEnabled = false;
    }

    /** Those that a hall's rush has called go soon: as usual one went each minute, and each keeps memory of its own. */
    private static QueuedThreadPool threads() {
        var threads = new QueuedThreadPool(MOST_THREADS, LEAST_THREADS, IDLE_MS);
        threads.setMaxEvictCount(GO_AT_ONCE);
        threads.setName("http");
        return threads;
    }

    private static void listen(JavalinConfig c, Settings settings) {
        c.jetty.threadPool = threads();
        // a spreadsheet may come back as a field of its form; how large the body of each route may be says BodyLimit
        c.jetty.modifyServletContextHandler(handler -> handler.setMaxFormContentSize(Routes.IMPORT_BODY));
        c.jetty.modifyServer(server -> {
            ThreadLimitHandler perAddress = new ThreadLimitHandler();
            perAddress.setThreadLimit(THREADS_OF_ONE);
            server.insertHandler(perAddress);
            ActsFirst actsFirst = new ActsFirst(IDLE_MS);
            perAddress.insertHandler(actsFirst);
            SlowBodies slowBodies = new SlowBodies(settings.pace().slowClient());
            actsFirst.insertHandler(slowBodies);
            slowBodies.insertHandler(new SlowTakers(settings.pace().slowClient(), SlowTakers.BYTES_PER_SECOND));
            server.setErrorHandler(new ProtocolErrors());
        });
        c.jetty.addConnector((server, http) -> {
            http.setSendServerVersion(false);
            http.setSendXPoweredBy(false);
            return connector(server, http, settings, settings.port());
        });
    }

    private static ServerConnector connector(
            org.eclipse.jetty.server.Server server, HttpConfiguration http, Settings settings, int port) {
        ServerConnector connector = new ServerConnector(server, new HttpConnectionFactory(http));
        connector.setHost(settings.host());
        connector.setPort(port);
        connector.setAcceptQueueSize(ACCEPT_QUEUE);
        connector.setIdleTimeout(settings.pace().slowClient().toMillis());
        return connector;
    }

    private static ConnectorWatch watch(org.eclipse.jetty.server.Server server, Settings settings) {
        return new ConnectorWatch(
                server,
                port -> {
                    HttpConfiguration http = server.getConnectors()[0]
                            .getConnectionFactory(HttpConnectionFactory.class)
                            .getHttpConfiguration();
                    return connector(server, http, settings, port);
                },
                LOOK_EVERY,
                HEARS_WITHIN);
    }
}
