package org.skeinday.platform.http;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a server and its first answer need is loaded by going through it once, while the record is still being opened on the
 * other core: a server on a port that nobody is told, one question to it, the page that says that there is nothing there.
 * It knows no record and no person. That it fails changes nothing but the time of the start.
 */
public final class Rehearsal {
    private static final Logger LOG = LoggerFactory.getLogger(Rehearsal.class);
    private static final String HERE = "127.0.0.1";

    private Rehearsal() {}

    /** Begins it and returns at once. */
    public static void beside() {
        Thread thread = new Thread(Rehearsal::once, "rehearsal");
        thread.setDaemon(true);
        thread.start();
    }

    /** @return the first line of the answer; empty when there was none */
    static String once() {
        Pace pace = Pace.normal();
        Page page = new Page(Page.precompiled(), List.of(), pace, person -> person);
        var settings = new Server.Settings(HERE, 0, () -> Set.of(HERE), () -> "rehearsal", pace);
        try (Server server = Server.start(settings, token -> Optional.empty(), page, routes -> {})) {
            return firstLine(server.port());
        } catch (IOException | RuntimeException e) {
            LOG.debug("The start is not rehearsed", e);
            return "";
        }
    }

    private static String firstLine(int port) throws IOException {
        try (Socket socket = new Socket(InetAddress.getByName(HERE), port)) {
            String question = "GET /rehearsal HTTP/1.1\r\nHost: " + HERE + ":" + port + "\r\nConnection: close\r\n\r\n";
            socket.getOutputStream().write(question.getBytes(StandardCharsets.US_ASCII));
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return answer.lines().findFirst().orElse("");
        }
    }
}
