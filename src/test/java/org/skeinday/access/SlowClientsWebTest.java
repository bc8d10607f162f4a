package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Visitor;
import org.skeinday.platform.http.Pace;

/** Who sends slowly, too much or too often stops nobody else. */
@Timeout(60)
class SlowClientsWebTest {
    @TempDir
    Path root;

    private House house;
    private final List<Socket> sockets = new ArrayList<>();

    private void start() throws Exception {
        house = new House(root.resolve("day"));
    }

    @AfterEach
    void stop() throws Exception {
        for (Socket socket : sockets) {
            socket.close();
        }
        house.close();
    }

    /** From another address of this machine's loopback, where the system has it. */
    private Socket from(String address) throws IOException {
        try {
            Socket socket = new Socket("127.0.0.1", house.app.port(), InetAddress.getByName(address), 0);
            sockets.add(socket);
            return socket;
        } catch (IOException e) {
            Assumptions.abort("This system has one loopback address only");
            throw e;
        }
    }

    private void send(Socket socket, String text) throws IOException {
        socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    @Test
    void four_hundred_half_open_requests_keep_nobody_waiting_and_are_dropped() throws Exception {
        start();
        Socket last = from("127.0.0.2");
        for (int i = 0; i < 400; i++) {
            last = from("127.0.0.2");
            send(last, "GET /join HTTP/1.1\r\nHost: localhost:" + house.app.port() + "\r\nX-Slow: ");
        }
        assertEquals(200, house.laptop.get("/now").statusCode());
        last.setSoTimeout(20_000);
        String answer = new String(last.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(answer.isEmpty() || answer.startsWith("HTTP/1.1 408"), answer);
    }

    @Test
    void bodies_that_come_drop_by_drop_keep_their_own_address_waiting_only() throws Exception {
        house = new House(root.resolve("day"), Pace.normal()); // nothing is dropped while this looks
        for (int i = 0; i < 320; i++) {
            send(
                    from("127.0.0.2"),
                    "POST /join HTTP/1.1\r\nHost: localhost:" + house.app.port() + "\r\nOrigin: http://localhost:"
                            + house.app.port()
                            + "\r\nHX-Request: true\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                            + "Content-Length: 60000\r\n\r\ntoken=");
        }
        assertEquals(200, house.laptop.get("/now").statusCode());
        assertEquals(
                200, house.laptop.form("/join/who", Map.of("token", token())).statusCode());
    }

    @Test
    void a_body_that_drips_on_for_ever_is_not_waited_for() throws Exception {
        start();
        Socket drips = from("127.0.0.1");
        drips.setSoTimeout(100);
        send(
                drips,
                "POST /join HTTP/1.1\r\nHost: localhost:" + house.app.port() + "\r\nOrigin: http://localhost:"
                        + house.app.port() + "\r\nHX-Request: true\r\n"
                        + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\ntoken=");
        int drops = 0;
        while (takesOneMore(drips) && drops < 900) { // the whole body would take a minute and a half
            drops++;
        }
        assertTrue(drops < 600, drops + " drops were taken, one each 100 ms");
        assertEquals(200, house.laptop.get("/now").statusCode());
    }

    /** Sends a byte and looks for a tenth of a second. */
    private boolean takesOneMore(Socket socket) {
        try {
            send(socket, "x");
            return socket.getInputStream().read() >= 0;
        } catch (java.net.SocketTimeoutException e) {
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private String token() {
        return house.app.joinLink().replaceFirst(".*#", "");
    }

    @Test
    void a_body_is_not_read_beyond_what_its_route_takes() throws Exception {
        start();
        Visitor helper = house.joined("helper");
        String before = house.head();
        String large = "x".repeat(70_000);
        assertEquals(413, answerTo(() -> helper.form("/practice", Map.of("note", large))));
        assertEquals(413, answerTo(() -> house.laptop.post("/taps/file", large)));
        byte[] file = new byte[5 * 1024 * 1024 + 1];
        assertEquals(413, answerTo(() -> house.laptop.upload("/import/look", "motors.csv", file, Map.of())));
        assertEquals(403, answerTo(() -> helper.upload("/import/look", "motors.csv", new byte[100], Map.of())));
        Socket chunked = from("127.0.0.1");
        send(
                chunked,
                "POST /taps HTTP/1.1\r\nHost: localhost:" + house.app.port() + "\r\nOrigin: http://localhost:"
                        + house.app.port() + "\r\nX-Skeinday: 1\r\nTransfer-Encoding: chunked\r\nConnection: close"
                        + "\r\n\r\n5\r\nhello\r\n0\r\n\r\n");
        String answer = new String(chunked.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(answer.startsWith("HTTP/1.1 411"), answer);
        assertEquals(before, house.head());
    }

    private String fileThatDrips(String cookie) {
        return "POST /import/look HTTP/1.1\r\nHost: localhost:" + house.app.port() + "\r\nOrigin: http://localhost:"
                + house.app.port() + "\r\nHX-Request: true\r\nCookie: " + cookie + "\r\nConnection: close\r\n"
                + "Content-Type: multipart/form-data; boundary=b\r\nContent-Length: 4000000\r\n\r\n--b\r\n";
    }

    @Test
    void a_large_file_that_drips_in_keeps_no_other_file_waiting() throws Exception {
        house = new House(root.resolve("day"), Pace.normal()); // nothing is dropped while this looks
        for (int i = 0; i < 3; i++) {
            send(from("127.0.0.2"), fileThatDrips("none=none"));
        }
        Thread.sleep(500); // they are being read
        long begun = System.nanoTime();
        byte[] csv = "batch,K\nNew lot,42\n".getBytes(StandardCharsets.UTF_8);
        HttpResponse<String> answer = house.laptop.upload("/import/look", "batches.csv", csv, Map.of());
        assertEquals(200, answer.statusCode(), answer.body());
        assertTrue(System.nanoTime() - begun < 10_000_000_000L, "it waited for those that drip");
    }

    @Test
    void who_may_send_no_file_is_refused_before_it_has_come() throws Exception {
        house = new House(root.resolve("day"), Pace.normal());
        String token = token();
        HttpResponse<String> joined =
                house.laptop.form("/join", Map.of("token", token, "code", "", "role", "helper", "person", ""));
        String cookie = joined.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
        Socket drips = from("127.0.0.2");
        drips.setSoTimeout(10_000);
        send(drips, fileThatDrips(cookie));
        byte[] first = drips.getInputStream().readNBytes("HTTP/1.1 403".length());
        assertEquals("HTTP/1.1 403", new String(first, StandardCharsets.UTF_8));
    }

    private interface Ask {
        HttpResponse<String> ask() throws IOException, InterruptedException;
    }

    /** Who still writes when the connection is closed may miss the answer: then it is asked again, at most five times. */
    private static int answerTo(Ask ask) throws IOException, InterruptedException {
        IOException missed = new IOException("never asked");
        for (int i = 0; i < 5; i++) {
            try {
                return ask.ask().statusCode();
            } catch (IOException e) {
                missed = e;
            }
        }
        throw missed;
    }

    @Test
    void a_packed_body_is_not_unpacked() throws Exception {
        start();
        var answer = house.laptop.bare(
                "POST",
                "/taps",
                "\u001f\u008b\b",
                "Origin",
                house.laptop.root(),
                "X-Skeinday",
                "1",
                "Content-Encoding",
                "gzip");
        assertTrue(answer.statusCode() == 400 || answer.statusCode() == 415, answer.statusCode() + answer.body());
    }

    @Test
    void who_asks_without_end_is_told_to_wait_and_the_others_are_served() throws Exception {
        start();
        Visitor wild = house.joined("viewer");
        Visitor calm = house.joined("viewer");
        int refused = 0;
        for (int i = 0; i < 6_000 && refused == 0; i++) {
            refused += wild.get("/clock").statusCode() == 429 ? 1 : 0;
        }
        assertEquals(1, refused, "none of 6,000 was refused");
        assertEquals(200, calm.get("/clock").statusCode());
        assertEquals(200, house.laptop.get("/now").statusCode());
    }
}
