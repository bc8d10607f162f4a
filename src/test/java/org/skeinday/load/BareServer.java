package org.skeinday.load;

import io.javalin.Javalin;
import io.javalin.http.sse.SseClient;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * The least that can be asked, in a process of its own: append the bytes and force them; tell every stream, at once or
 * gathered as ours are; hand bytes out.
 */
final class BareServer {
    private static final long GATHER_MS = 100;

    private final FileChannel file;
    private final Set<SseClient> streams = ConcurrentHashMap.newKeySet();
    private final ScheduledExecutorService later = Executors.newSingleThreadScheduledExecutor();
    private final AtomicBoolean gathering = new AtomicBoolean();

    private BareServer(Path path, byte[] page, int port) throws IOException {
        file = FileChannel.open(path, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        Javalin javalin = Javalin.create(c -> {
            c.startup.showJavalinBanner = false;
            c.routes.post("/append", context -> {
                append(context.bodyAsBytes());
                context.result("saved");
                tellSoon();
            });
            c.routes.post("/tell", context -> tell());
            c.routes.get("/page", context -> context.result(page));
            c.routes.sse("/stream", client -> {
                client.keepAlive();
                streams.add(client);
                client.onClose(() -> streams.remove(client));
                client.sendEvent("resync", "");
            });
        });
        javalin.start("127.0.0.1", port);
    }

    private synchronized void append(byte[] bytes) throws IOException {
        file.write(ByteBuffer.wrap(bytes));
        file.force(false);
    }

    private void tell() {
        streams.forEach(stream -> stream.sendEvent("hint", "{}"));
    }

    private void tellSoon() {
        if (gathering.compareAndSet(false, true)) {
            var unused = later.schedule(
                    () -> {
                        gathering.set(false);
                        tell();
                    },
                    GATHER_MS,
                    TimeUnit.MILLISECONDS);
        }
    }

    /** @param arguments the file to append to, the file with the page, the port */
    public static void main(String[] arguments) throws IOException {
        new BareServer(
                Path.of(arguments[0]), Files.readAllBytes(Path.of(arguments[1])), Integer.parseInt(arguments[2]));
        System.out.println("Ready.");
    }
}
