package org.skeinday.platform.http;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.record.Sha;

/**
 * A part of a page as it goes out: bytes, and their tag, made from the content itself, so that it is right for every
 * role, unit and moment. Packed once, for the first that takes it so.
 */
final class PackedPart {
    private static final int TAG_DIGITS = 32;
    private static final int WORTH_PACKING = 1_400; // what fits one packet is not sooner there

    private final byte[] plain;
    private final String tag;
    private volatile byte @Nullable [] packed;

    private PackedPart(byte[] plain, String tag) {
        this.plain = plain;
        this.tag = tag;
    }

    static PackedPart of(String html) {
        return new PackedPart(
                html.getBytes(StandardCharsets.UTF_8), "\"" + Sha.hex(html).substring(0, TAG_DIGITS) + "\"");
    }

    /** A page that has it already gets 304. */
    void send(Context context) {
        context.header("ETag", tag);
        context.header("Cache-Control", "no-cache");
        if (tag.equals(context.header("If-None-Match"))) {
            context.status(304);
            return;
        }
        context.contentType("text/html; charset=utf-8");
        context.disableCompression();
        if (plain.length < WORTH_PACKING) {
            context.result(plain);
            return;
        }
        context.header("Vary", "Accept-Encoding");
        if (takesPacked(context.header("Accept-Encoding"))) {
            context.header("Content-Encoding", "gzip");
            context.result(packed());
        } else {
            context.result(plain);
        }
    }

    /** Browsers name what they take without weights; whoever weighs gets it plain. */
    private static boolean takesPacked(@Nullable String accepted) {
        return accepted != null && accepted.contains("gzip") && !accepted.contains("q=");
    }

    private byte[] packed() {
        byte[] once = packed;
        if (once == null) {
            once = gzip(plain); // two may pack it at once: the bytes are the same
            packed = once;
        }
        return once;
    }

    private static byte[] gzip(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length / 4);
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
