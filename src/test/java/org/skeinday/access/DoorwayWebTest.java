package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.platform.http.Routes;

/** What each request must show at the door, asked of every route, to the letter of the protocol. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(60)
class DoorwayWebTest {
    @TempDir
    static Path root;

    private House house;

    @BeforeAll
    void start() throws Exception {
        house = new House(root.resolve("day"));
    }

    @AfterAll
    void stop() throws Exception {
        house.close();
    }

    private String own() {
        return "localhost:" + house.app.port();
    }

    /** The whole answer. */
    private String ask(String method, String path, String... headers) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", house.app.port())) {
            OutputStream out = socket.getOutputStream();
            String all = String.join("\r\n", headers);
            out.write((method + " " + path + " HTTP/1.1\r\nConnection: close\r\n" + all + "\r\n\r\n")
                    .getBytes(StandardCharsets.ISO_8859_1));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static boolean is(int status, String answer) {
        return answer.startsWith("HTTP/1.1 " + status + " ");
    }

    private List<String> notAnswered(int status, boolean posts, String... headers) throws Exception {
        List<String> wrong = new ArrayList<>();
        String before = house.head();
        for (Routes.Right right : house.rights()) {
            if (!posts || right.method().equals("POST")) {
                String answer = ask(right.method(), house.filled(right), headers);
                if (!is(status, answer)) {
                    wrong.add(right.method() + " " + right.path() + ": "
                            + answer.lines().findFirst().orElse("nothing"));
                }
            }
        }
        assertEquals(before, house.head());
        return wrong;
    }

    @Test
    void no_route_answers_under_a_foreign_name() throws Exception {
        assertEquals(List.of(), notAnswered(421, false, "Host: evil.example:" + house.app.port(), "Content-Length: 0"));
        for (String host : List.of(
                "evil.example",
                "localhost.evil.example:" + house.app.port(),
                "localhost:1",
                "localhost",
                "127.0.0.1.nip.example:" + house.app.port(),
                "user@localhost:" + house.app.port())) {
            String answer = ask("GET", "/join", "Host: " + host);
            assertTrue(is(421, answer) || is(400, answer), host + ": " + answer);
        }
        assertTrue(is(400, ask("GET", "/join")), "without any name");
        assertTrue(is(400, ask("GET", "/join", "Host: " + own(), "Host: evil.example")), "with two");
        assertTrue(is(200, ask("GET", "/join", "Host: " + own().toUpperCase(Locale.ROOT))));
    }

    @Test
    void no_form_is_taken_without_own_origin_and_own_header() throws Exception {
        String host = "Host: " + own();
        String origin = "Origin: http://" + own();
        assertEquals(List.of(), notAnswered(403, true, host, "Content-Length: 0"));
        assertEquals(List.of(), notAnswered(403, true, host, origin, "Content-Length: 0"));
        assertEquals(List.of(), notAnswered(403, true, host, "HX-Request: true", "Content-Length: 0"));
        for (String foreign : List.of("http://evil.example", "null", "https://" + own(), "http://localhost:1", "")) {
            String answer =
                    ask("POST", "/attempt/call", host, "Origin: " + foreign, "HX-Request: true", "Content-Length: 0");
            assertTrue(is(403, answer), foreign + ": " + answer);
        }
    }

    @Test
    void nothing_but_reading_and_posting_is_served() throws Exception {
        String before = house.head();
        for (String method : List.of("OPTIONS", "TRACE", "PUT", "DELETE", "PATCH", "CONNECT", "PROPFIND", "QUERY")) {
            for (String path : List.of("/", "/join", "/taps", "/static/js/page.js", "/nowhere")) {
                String answer = ask(method, path, "Host: " + own(), "Cookie: secret=1", "Content-Length: 0");
                assertTrue(
                        is(405, answer) || is(400, answer) || is(404, answer) || is(501, answer),
                        method + " " + path + ": " + answer);
                assertTrue(!answer.contains("secret=1"), "what was sent is not sent back: " + answer);
                assertTrue(!answer.toLowerCase(Locale.ROOT).contains("access-control-"), answer);
            }
        }
        assertTrue(!is(200, ask("OPTIONS", "*", "Host: " + own())));
        assertEquals(before, house.head());
    }

    @Test
    void every_answer_keeps_others_out_and_names_no_version() throws Exception {
        List<String> wrong = new ArrayList<>();
        for (Routes.Right right : house.rights()) {
            String answer = ask(
                    right.method(),
                    house.filled(right),
                    "Host: " + own(),
                    "Origin: http://evil.example",
                    "Content-Length: 0");
            String head = answer.substring(0, answer.indexOf("\r\n\r\n")).toLowerCase(Locale.ROOT);
            for (String needed : List.of(
                    "content-security-policy: default-src 'none'; script-src 'self'",
                    "frame-ancestors 'none'",
                    "x-content-type-options: nosniff",
                    "referrer-policy: no-referrer",
                    "cache-control: no-")) {
                if (!head.contains(needed)) {
                    wrong.add(right.method() + " " + right.path() + " lacks " + needed);
                }
            }
            boolean isFile = head.contains("application/zip") || head.contains("spreadsheet") || head.contains("json");
            boolean hasText = is(200, answer) && !isFile && !right.path().equals("/live");
            if (hasText && !head.matches("(?s).*content-type: [a-z/+-]+;\\s*charset=utf-8.*")) {
                wrong.add(right.method() + " " + right.path() + " does not name its type: " + head);
            }
            for (String unwanted :
                    List.of("\nserver:", "x-powered-by", "access-control-", "unsafe-", "jetty", "javalin")) {
                if (head.contains(unwanted)) {
                    wrong.add(right.method() + " " + right.path() + " says " + unwanted);
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void errors_of_the_protocol_itself_name_no_version_and_no_trace() throws Exception {
        for (String line : List.of(
                "GET /%zz HTTP/1.1",
                "GET /join HTTP/9.9",
                "G\u0000T / HTTP/1.1",
                "GET " + "/x".repeat(20_000) + " HTTP/1.1",
                "GET /static/../../etc/passwd HTTP/1.1",
                "GET /static/%2e%2e/%2e%2e/etc/passwd HTTP/1.1",
                "GET //evil.example/ HTTP/1.1",
                "GET http://evil.example/ HTTP/1.1",
                "GET /join;jsessionid=1/..;/devices HTTP/1.1")) {
            try (Socket socket = new Socket("127.0.0.1", house.app.port())) {
                socket.getOutputStream()
                        .write((line + "\r\nHost: " + own() + "\r\nConnection: close\r\n\r\n")
                                .getBytes(StandardCharsets.ISO_8859_1));
                String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                assertTrue(answer.startsWith("HTTP/1.1 4") || is(505, answer), line + ": " + answer);
                String low = answer.toLowerCase(Locale.ROOT);
                assertTrue(!low.contains("jetty") && !low.contains("java.") && !low.contains("root:"), answer);
            }
        }
    }
}
