package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.skeinday.Await;
import org.skeinday.platform.live.LiveHub;
import org.skeinday.platform.live.LiveRoutes;
import org.skeinday.platform.live.TapRules;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Answer;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(20)
class ServerWebTest {
    private static final String ID = "0123456789abcdef0123456789abcdef";
    private final Pace pace = Pace.normal().dividedBy(20);
    private final LiveHub hub = new LiveHub(pace, "run");
    private final Map<String, Act> acts = new ConcurrentHashMap<>();
    private Server server;

    @BeforeAll
    void start() {
        Page page = new Page(
                Page.precompiled(), List.of(new NavItem("Now", "/now", Role.VIEWER)), pace, UnaryOperator.identity());
        Callers callers = token -> token.equals("viewer")
                ? Optional.of(new Caller("tablet", "Ada", Role.VIEWER, false))
                : Optional.empty();
        Server.Settings settings = new Server.Settings("127.0.0.1", 0, () -> Set.of("hall"), () -> "ref-1", pace);
        Clock clock = Clock.fixed(Instant.ofEpochMilli(1000), ZoneOffset.UTC);
        server = Server.start(settings, callers, page, routes -> {
            LiveRoutes.register(
                    routes,
                    hub,
                    this::submit,
                    clock,
                    new TapRules(
                            java.util.Map.of("watch.release", Role.HELPER, "no", Role.HELPER), id -> Optional.empty()));
            routes.get("/coach", Role.COACH, context -> context.result("coach only"));
            routes.get("/full", Role.VIEWER, context -> {
                throw new OutOfMemoryError("Java heap space");
            });
            routes.get("/broken", Role.VIEWER, context -> {
                throw new IllegalStateException("secret detail");
            });
        });
    }

    private Answer submit(Act act) {
        if (act.kind().equals("no")) {
            return new Answer.Refused("not now", Map.of());
        }
        acts.putIfAbsent(act.id(), act);
        return new Answer.Saved(acts.size(), act.id());
    }

    @AfterAll
    void stop() {
        hub.close();
        server.close();
    }

    @Test
    void a_foreign_host_name_is_not_served() throws Exception {
        assertTrue(ask("GET", "/coach", "evil.example:" + server.port(), "", "").startsWith("HTTP/1.1 421"));
        assertTrue(ask("GET", "/coach", "hall:" + server.port(), "", "").startsWith("HTTP/1.1 200"));
    }

    @Test
    void a_role_below_the_route_is_refused_and_the_laptop_is_the_coach() throws Exception {
        assertTrue(get("/coach", "Cookie: skeinday=viewer\r\n").startsWith("HTTP/1.1 403"));
        assertTrue(get("/coach", "").contains("coach only"));
    }

    @Test
    void each_answer_carries_the_policy_and_no_version() throws Exception {
        String answer = get("/nowhere", "");
        assertTrue(answer.startsWith("HTTP/1.1 404"), answer);
        assertTrue(answer.contains("default-src 'none'; script-src 'self'"), answer);
        assertTrue(answer.contains("X-Content-Type-Options: nosniff"), answer);
        assertFalse(answer.toLowerCase(java.util.Locale.ROOT).contains("\nserver:"), answer);
    }

    @Test
    void an_unexpected_error_shows_a_reference_and_no_detail() throws Exception {
        String answer = get("/broken", "");
        assertTrue(answer.startsWith("HTTP/1.1 500") && answer.contains("ref-1"), answer);
        assertFalse(answer.contains("secret detail"), answer);
    }

    @Test
    void memory_that_runs_out_in_a_handler_is_an_error_of_that_page_alone() throws Exception {
        String answer = get("/full", "");
        assertTrue(answer.startsWith("HTTP/1.1 500"), answer);
        assertFalse(answer.contains("heap space"), answer);
        assertTrue(get("/coach", "").startsWith("HTTP/1.1 200"), "the next one is served");
    }

    @Test
    void a_post_needs_own_origin_and_own_header() throws Exception {
        String origin = "Origin: http://localhost:" + server.port() + "\r\n";
        assertTrue(post("", "{\"taps\":[]}").startsWith("HTTP/1.1 403"));
        assertTrue(post(origin, "{\"taps\":[]}").startsWith("HTTP/1.1 403"));
        assertTrue(
                post("Origin: http://evil.example\r\nX-Skeinday: 1\r\n", "{}").startsWith("HTTP/1.1 403"));
        assertTrue(taps("{\"taps\":[]}").startsWith("HTTP/1.1 200"));
    }

    @Test
    void a_body_over_64_kb_is_refused() throws Exception {
        assertTrue(taps("x".repeat(Routes.ORDINARY_BODY + 1)).startsWith("HTTP/1.1 413"));
    }

    @Test
    void trace_is_not_served() throws Exception {
        assertTrue(ask("TRACE", "/coach", host(), "", "").startsWith("HTTP/1.1 405"));
    }

    @Test
    void each_tap_is_answered_for_itself() throws Exception {
        String good = tap(ID, "watch.release");
        String answer =
                taps("{\"taps\":[" + good + "," + good + "," + tap(ID.replace('0', 'f'), "no") + ",{\"id\":\"x\"}]}");
        assertEquals(2, answer.split("\"state\":\"saved\"", -1).length - 1, answer);
        assertTrue(answer.contains("not now") && answer.contains("A tap needs 'kind'"), answer);
        assertTrue(acts.values().stream().allMatch(act -> act.device().equals("laptop")));
    }

    @Test
    void malformed_json_is_said_to_be_malformed() throws Exception {
        String answer = taps("{\"taps\":[");
        assertTrue(answer.startsWith("HTTP/1.1 400") && answer.contains("must be JSON"), answer);
    }

    @Test
    void hints_within_the_gathering_time_arrive_as_one() throws Exception {
        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            send(socket, "GET", "/live?topics=a,b", host(), "Accept: text/event-stream\r\n", "");
            BufferedReader in =
                    new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            until(in, "event: resync");
            assertTrue(until(in, "data: ").length() > 6, "a browser passes an event without data over");
            hub.publish(Set.of("a"), 7);
            hub.publish(Set.of("b", "other"), 8);
            String data = until(in, "data: {");
            assertTrue(data.contains("\"a\"") && data.contains("\"b\"") && data.contains("\"n\":8"), data);
            assertFalse(data.contains("other"), data);
        }
    }

    @Test
    void a_server_that_stops_under_open_pages_leaves_no_thread_behind() throws Exception {
        for (int round = 0; round < 5; round++) {
            LiveHub own = new LiveHub(pace, "run");
            Page page = new Page(Page.precompiled(), List.of(), pace, UnaryOperator.identity());
            Server.Settings settings = new Server.Settings("127.0.0.1", 0, Set::of, () -> "ref", pace);
            Server stopping = Server.start(
                    settings,
                    token -> Optional.empty(),
                    page,
                    routes -> routes.get("/live", Role.VIEWER, own.handler()));
            List<Socket> sockets = new java.util.ArrayList<>();
            for (int i = 0; i < 20; i++) {
                Socket socket = new Socket("127.0.0.1", stopping.port());
                sockets.add(socket);
                send(
                        socket,
                        "GET",
                        "/live?topics=a",
                        "localhost:" + stopping.port(),
                        "Accept: text/event-stream\r\n",
                        "");
                until(
                        new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8)),
                        "event: resync");
            }
            stopping.close();
            own.publish(Set.of("a"), 1);
            for (Socket socket : sockets) {
                socket.close();
            }
            own.close();
        }
        Await.until(Duration.ofSeconds(5), () -> liveThreads() == 0);
    }

    @Test
    void a_route_that_names_no_role_does_not_start() {
        var settings = new Server.Settings("127.0.0.1", 0, Set::of, () -> "ref", pace);
        var page = new Page(Page.precompiled(), List.of(), pace, UnaryOperator.identity());
        var error = assertThrows(
                IllegalStateException.class,
                () -> Server.start(
                        settings,
                        token -> Optional.empty(),
                        page,
                        routes -> routes.beside().get("/open-door", context -> context.result("come in"))));
        assertTrue(error.getMessage().contains("GET /open-door"), error.getMessage());
    }

    private static long liveThreads() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().equals("live"))
                .count();
    }

    private static String until(BufferedReader in, String start) throws Exception {
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            if (line.startsWith(start)) {
                return line;
            }
        }
        throw new AssertionError("The stream ended before '" + start + "'");
    }

    private static String tap(String id, String kind) {
        return "{\"id\":\"" + id + "\",\"kind\":\"" + kind + "\",\"at\":\"2026-01-01T10:00:00Z\",\"content\":{}}";
    }

    private String host() {
        return "localhost:" + server.port();
    }

    private String get(String path, String headers) throws Exception {
        return ask("GET", path, host(), headers, "");
    }

    private String taps(String body) throws Exception {
        return post("Origin: http://" + host() + "\r\nX-Skeinday: 1\r\n", body);
    }

    private String post(String headers, String body) throws Exception {
        return ask("POST", "/taps", host(), headers + "Content-Length: " + body.length() + "\r\n", body);
    }

    private String ask(String method, String path, String host, String headers, String body) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            send(socket, method, path, host, headers + "Connection: close\r\n", body);
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static void send(Socket socket, String method, String path, String host, String headers, String body)
            throws Exception {
        OutputStream out = socket.getOutputStream();
        out.write((method + " " + path + " HTTP/1.1\r\nHost: " + host + "\r\n" + headers + "\r\n" + body)
                .getBytes(StandardCharsets.UTF_8));
        out.flush();
    }
}
