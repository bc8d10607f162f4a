package org.skeinday.platform.http;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.staticfiles.Location;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.eclipse.jetty.server.ServerConnector;
import org.skeinday.platform.live.LiveHub;

/** The web server of one data folder. */
public final class Server implements AutoCloseable {
    private static final int LARGEST_BODY = 64 * 1024;
    private static final int ACCEPT_QUEUE = 2048;
    private static final String HTMX = "/META-INF/resources/webjars/htmx.org/2.0.10/dist";

    private final Javalin javalin;
    private final LiveHub live;

    public Server(int port, Pages pages, Callers callers, LiveHub live, List<Room> rooms) {
        this.live = live;
        var access = new Access(callers, this::hosts);
        this.javalin = Javalin.create(config -> configure(config, pages, access, rooms));
        javalin.start(port);
    }

    private void configure(JavalinConfig config, Pages pages, Access access, List<Room> rooms) {
        config.http.maxRequestSize = LARGEST_BODY;
        config.startup.showJavalinBanner = false;
        config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
        config.jetty.modifyServer(server -> {
            for (var connector : server.getConnectors()) {
                if (connector instanceof ServerConnector tcp) {
                    tcp.setAcceptQueueSize(ACCEPT_QUEUE);
                }
            }
        });
        staticFiles(config, "/static", "/static");
        staticFiles(config, "/lib", HTMX);
        config.routes.before(access::check);
        var routes = new Routes(config.routes, access);
        rooms.forEach(room -> room.register(routes));
        config.routes.sse(
                "/live", client -> live.join(client, access.caller(client.ctx()).role() != Role.ANYONE));
        config.routes.error(404, ctx -> {
            if (ctx.result() == null || ctx.result().isEmpty() || "Not Found".equals(ctx.result())) {
                throw new NotFoundResponse();
            }
        });
        new ErrorPages(pages, access).register(config.routes);
    }

    private static void staticFiles(JavalinConfig config, String address, String folder) {
        config.staticFiles.add(files -> {
            files.hostedPath = address;
            files.directory = folder;
            files.location = Location.CLASSPATH;
            files.headers = Map.of("Cache-Control", "max-age=300");
        });
    }

    public int port() {
        return javalin.port();
    }

    /** Addresses under which a tablet can reach this server, private networks first. */
    public List<String> addresses() {
        return ownAddresses().stream()
                .filter(address -> !address.isLoopbackAddress() && address instanceof java.net.Inet4Address)
                .map(address -> "http://" + address.getHostAddress() + ":" + port())
                .sorted()
                .toList();
    }

    private Set<String> hosts() {
        Set<String> hosts = new HashSet<>();
        hosts.add("localhost:" + port());
        for (InetAddress address : ownAddresses()) {
            hosts.add(address.getHostAddress().toLowerCase(Locale.ROOT) + ":" + port());
        }
        return hosts;
    }

    private static Set<InetAddress> ownAddresses() {
        Set<InetAddress> all = new HashSet<>();
        try {
            NetworkInterface.networkInterfaces()
                    .flatMap(NetworkInterface::inetAddresses)
                    .forEach(all::add);
        } catch (SocketException e) {
            all.add(InetAddress.getLoopbackAddress()); // no network at all: the laptop alone still works
        }
        return all;
    }

    @Override
    public void close() {
        live.close();
        javalin.stop();
    }
}
