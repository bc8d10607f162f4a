package org.skeinday.load;

import io.javalin.Javalin;
import io.javalin.http.sse.SseClient;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** The least that can be asked: append the bytes and force them; tell every stream at once; hand bytes out. */
final class BareServer implements AutoCloseable {
    private final FileChannel file;
    private final Set<SseClient> streams = ConcurrentHashMap.newKeySet();
    private final Javalin javalin;

    /** @param page what it hands out to whoever asks */
    BareServer(Path path, byte[] page) throws IOException {
        file = FileChannel.open(path, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        javalin = Javalin.create(c -> {
            c.startup.showJavalinBanner = false;
            c.routes.post("/append", context -> {
                append(context.bodyAsBytes());
                context.result("saved");
            });
            c.routes.post("/tell", context -> streams.forEach(s -> s.sendEvent("hint", "{}")));
            c.routes.get("/page", context -> context.result(page));
            c.routes.sse("/stream", client -> {
                client.keepAlive();
                streams.add(client);
                client.sendEvent("resync", "");
            });
        });
        javalin.start("127.0.0.1", 0);
    }

    private synchronized void append(byte[] bytes) throws IOException {
        file.write(ByteBuffer.wrap(bytes));
        file.force(false);
    }

    int port() {
        return javalin.port();
    }

    @Override
    public void close() throws IOException {
        javalin.stop();
        file.close();
    }
}
