package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Visitor;
import org.skeinday.platform.http.Routes;

/** Requests that no page of ours sends: each gets a sentence, none an error of the program, none reaches the log. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(180)
class TornRequestsWebTest {
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

    private void isMalformed(HttpResponse<String> answer) {
        assertEquals(400, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("The body must be JSON"), answer.body());
    }

    @Test
    void taps_nested_too_deep_or_with_endless_numbers_and_names_are_malformed() throws Exception {
        for (String part : List.of(
                "[".repeat(2_000) + "]".repeat(2_000),
                "1".repeat(1_001),
                "0." + "1".repeat(1_001),
                "{\"" + "n".repeat(51_000) + "\":1}",
                "{\"a\":".repeat(2_000) + "1" + "}".repeat(2_000))) {
            isMalformed(house.laptop.post("/taps", "{\"taps\":[" + part + "]}"));
            isMalformed(house.laptop.post("/taps/file", "{\"device\":\"laptop\",\"taps\":[" + part + "]}"));
        }
        assertEquals(
                200,
                house.laptop
                        .post("/taps", "{\"taps\":[{\"content\":" + "[".repeat(900) + "]".repeat(900) + "}]}")
                        .statusCode());
    }

    private HttpResponse<String> multipart(String path, String type, String body) throws Exception {
        return house.laptop.bare(
                "POST", path, body, "Origin", house.laptop.root(), "HX-Request", "true", "Content-Type", type);
    }

    @Test
    void files_that_are_torn_on_their_way_are_asked_for_again() throws Exception {
        String whole =
                "--b\r\nContent-Disposition: form-data; name=\"files\"; filename=\"motors.csv\"\r\n\r\ntag\r\nA1\r\n";
        for (String path : List.of(
                "/import/look",
                "/import/take",
                "/import/history/open",
                "/import/history/look",
                "/import/history/take")) {
            for (String[] torn : new String[][] {
                {"multipart/form-data; boundary=b", whole},
                {"multipart/form-data; boundary=b", "--b\r\nContent-Dispo"},
                {"multipart/form-data", whole + "--b--\r\n"},
                {"multipart/form-data; boundary=", whole + "--b--\r\n"}
            }) {
                HttpResponse<String> answer = multipart(path, torn[0], torn[1]);
                assertTrue(
                        answer.statusCode() == 400 || answer.statusCode() == 422,
                        path + " " + torn[0] + ": " + answer.statusCode() + answer.body());
                assertTrue(answer.body().contains("hoose"), answer.body());
            }
        }
    }

    @Test
    void a_file_whose_name_cannot_be_printed_is_named_anew() throws Exception {
        for (String name : List.of("mo\u0000tors.csv", "mo\u0001tors.xlsx", "\u0000", "motors\u202Evsc.csv")) {
            HttpResponse<String> answer =
                    house.laptop.upload("/import/look", name, "tag\nA1\n".getBytes(StandardCharsets.UTF_8), Map.of());
            assertTrue(answer.statusCode() == 400 || answer.statusCode() == 422, name + answer.body());
        }
    }

    @Test
    void head_is_answered_to_whom_get_is() throws Exception {
        Visitor viewer = house.joined("viewer");
        List<String> wrong = new ArrayList<>();
        for (Routes.Right right : house.rights()) {
            if (right.method().equals("GET")
                    && right.minimum() != null
                    && !right.path().equals("/live")) {
                String path = house.filled(right);
                int get = viewer.get(path).statusCode();
                int head = viewer.bare("HEAD", path, "").statusCode();
                if ((get == 403) != (head == 403)) {
                    wrong.add(right.path() + " get " + get + " head " + head);
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    private String raw(byte[] request) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", house.app.port())) {
            socket.setSoTimeout(20_000);
            OutputStream out = socket.getOutputStream();
            out.write(request);
            out.flush();
            socket.shutdownOutput();
            ByteArrayOutputStream all = new ByteArrayOutputStream();
            socket.getInputStream().transferTo(all);
            return all.toString(StandardCharsets.ISO_8859_1);
        }
    }

    @Test
    void what_breaks_the_protocol_itself_gets_the_policy_and_nothing_of_it_is_logged() throws Exception {
        String host = "Host: localhost:" + house.app.port() + "\r\nConnection: close\r\n\r\n";
        for (String line : List.of(
                "GET /%zz?Mattis-secret HTTP/1.1\r\n" + host,
                "GET /%00Mattis-secret HTTP/1.1\r\n" + host,
                "GET /join HTTP/9.9\r\nX: Mattis-secret\r\n" + host,
                "GET / HTTP/1.1\r\nMattis-secret\r\n" + host,
                "G\u0000T /Mattis-secret HTTP/1.1\r\n" + host,
                "GET /" + "Mattis-secret".repeat(3_000) + " HTTP/1.1\r\n" + host,
                "GET / HTTP/1.1\r\nX-Long: " + "Mattis-secret".repeat(3_000) + "\r\n" + host,
                "POST /taps HTTP/1.1\r\nContent-Length: Mattis-secret\r\n" + host,
                "GET / HTTP/1.1\r\nHost: Mattis secret@\r\nConnection: close\r\n\r\n",
                "GET /join;Mattis-secret=1/..;/devices HTTP/1.1\r\n" + host,
                "GET /a/%2e%2e/Mattis-secret HTTP/1.1\r\n" + host)) {
            String answer = raw(line.getBytes(StandardCharsets.ISO_8859_1));
            String low = answer.toLowerCase(java.util.Locale.ROOT);
            String shown = line.substring(0, Math.min(40, line.length())) + ": " + answer;
            assertTrue(answer.matches("(?s)HTTP/1.1 (4|505).*"), shown);
            assertTrue(low.contains("content-security-policy: default-src 'none'"), shown);
            assertTrue(low.contains("x-content-type-options: nosniff"), shown);
            assertTrue(low.contains("cache-control: no-store"), shown);
            assertFalse(answer.contains("Mattis"), shown);
        }
        String log = Files.readString(house.folder.resolve("logs/skeinday.log"), StandardCharsets.UTF_8);
        assertFalse(log.contains("Mattis"), log);
    }

    @Test
    void what_a_library_says_of_a_request_is_left_out_of_the_log() throws Exception {
        org.slf4j.LoggerFactory.getLogger("org.eclipse.jetty.http.HttpParser").warn("bad {}", "Mattis\nwas here");
        org.slf4j.LoggerFactory.getLogger("org.skeinday.test").warn("own words\nin one line");
        String log = Files.readString(house.folder.resolve("logs/skeinday.log"), StandardCharsets.UTF_8);
        assertFalse(log.contains("Mattis"), log);
        assertTrue(log.contains("HttpParser"), log);
        assertTrue(log.contains("own words in one line"), log);
    }
}
