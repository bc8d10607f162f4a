package org.skeinday.platform.http;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.zip.CRC32;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;

/** Files of the program itself, packed once; the browser asks each time whether its copy is still the right one. */
final class StaticFiles {
    private static final Map<String, String> TYPES = Map.of(
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "svg", "image/svg+xml",
            "png", "image/png",
            "woff2", "font/woff2",
            "webmanifest", "application/manifest+json");
    private static final String HTMX = "/META-INF/resources/webjars/htmx.org/";

    private final Map<String, Packed> packed = new ConcurrentHashMap<>();
    private final String htmxVersion;
    private final Modules modules = new Modules(name -> new String(read("/static/js/" + name), StandardCharsets.UTF_8));

    private record Packed(String type, String tag, byte[] gzip) {}

    /** @param htmxVersion as in its webjar's folder: the page's address for it stays the same */
    StaticFiles(String htmxVersion) {
        this.htmxVersion = htmxVersion;
    }

    void serve(Context context) {
        String path = context.pathParam("path");
        Packed file = packed.computeIfAbsent(path, this::load);
        context.header("Cache-Control", "no-cache");
        context.header("ETag", file.tag());
        if (file.tag().equals(context.header("If-None-Match"))) {
            context.status(304);
            return;
        }
        context.contentType(file.type());
        context.header("Content-Encoding", "gzip");
        context.disableCompression();
        context.result(file.gzip());
    }

    private Packed load(String path) {
        @Nullable String type = TYPES.get(path.substring(path.lastIndexOf('.') + 1));
        if (type == null || path.contains("..")) {
            throw Refusal.notFound("There is no such file.");
        }
        if (path.equals("js/htmx.js")) {
            return pack(type, read(HTMX + htmxVersion + "/dist/htmx.min.js"));
        }
        return pack(type, path.startsWith("js/") ? module(path.substring(3)) : read("/static/" + path));
    }

    private byte[] module(String name) {
        String text = modules.text(name);
        if (text == null) {
            throw Refusal.notFound("This is a part of " + Modules.ROOT + ".");
        }
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] read(String resource) {
        try (InputStream in = StaticFiles.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw Refusal.notFound("There is no such file.");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Packed pack(String type, byte[] bytes) {
        try {
            return packed(type, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Packed packed(String type, byte[] bytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        }
        CRC32 sum = new CRC32();
        sum.update(bytes);
        return new Packed(type, "\"" + Long.toHexString(sum.getValue()) + "-" + bytes.length + "\"", out.toByteArray());
    }
}
