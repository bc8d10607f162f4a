package org.skeinday.fault;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A bad Wi-Fi between a device and the server: loses a share of the requests before the server sees them, and the same
 * share of the answers after it has acted. Pages and their files come through, so that there is something to tap on.
 */
final class LossyProxy implements AutoCloseable {
    private static final Pattern LENGTH = Pattern.compile("(?im)^content-length: *(\\d+)");

    private final ServerSocket door;
    private final int server;
    private final double share;
    private final SplittableRandom random;
    private final ExecutorService threads = Executors.newCachedThreadPool();
    final AtomicInteger requestsLost = new AtomicInteger();
    final AtomicInteger answersLost = new AtomicInteger();

    LossyProxy(int server, double share, long seed) throws IOException {
        this.server = server;
        this.share = share;
        this.random = new SplittableRandom(seed);
        this.door = new ServerSocket(0, 256, InetAddress.getLoopbackAddress());
        threads.execute(this::accept);
    }

    int port() {
        return door.getLocalPort();
    }

    private void accept() {
        while (!door.isClosed()) {
            try {
                Socket client = door.accept();
                threads.execute(() -> serve(client));
            } catch (IOException e) {
                return; // closed
            }
        }
    }

    private synchronized boolean lost() {
        return random.nextDouble() < share;
    }

    /** One request for each connection: losing it is closing the connection. */
    private void serve(Socket client) {
        try (client;
                Socket upstream = new Socket(InetAddress.getLoopbackAddress(), server)) {
            byte[] request = request(client.getInputStream());
            String head = new String(request, StandardCharsets.ISO_8859_1);
            boolean risky = head.startsWith("POST /taps") || head.startsWith("GET /timing/part");
            if (risky && lost()) {
                requestsLost.incrementAndGet();
                return;
            }
            upstream.getOutputStream().write(request);
            upstream.getOutputStream().flush();
            if (risky && lost()) {
                upstream.getInputStream().readAllBytes(); // the server has done it
                answersLost.incrementAndGet();
                return;
            }
            upstream.getInputStream().transferTo(client.getOutputStream());
        } catch (IOException e) {
            // either side has gone: that is what this is for
        }
    }

    /** The request as the server would see it without a proxy. */
    private byte[] request(InputStream from) throws IOException {
        InputStream in = new BufferedInputStream(from);
        var head = new ByteArrayOutputStream();
        String text = "";
        for (int b = in.read(); b >= 0; b = in.read()) {
            head.write(b);
            if (b == '\n') {
                text = head.toString(StandardCharsets.ISO_8859_1);
                if (text.endsWith("\r\n\r\n")) {
                    break;
                }
            }
        }
        Matcher length = LENGTH.matcher(text);
        byte[] body = length.find() ? in.readNBytes(Integer.parseInt(length.group(1))) : new byte[0];
        String own = text.replace("localhost:" + port(), "localhost:" + server)
                .replaceFirst("(?i)\r\nconnection: [^\r]*", "")
                .replaceFirst("\r\n\r\n$", "\r\nConnection: close\r\n\r\n");
        var whole = new ByteArrayOutputStream();
        whole.writeBytes(own.getBytes(StandardCharsets.ISO_8859_1));
        whole.writeBytes(body);
        return whole.toByteArray();
    }

    @Override
    public void close() throws IOException {
        door.close();
        threads.shutdownNow();
    }
}
