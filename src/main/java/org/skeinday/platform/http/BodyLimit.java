package org.skeinday.platform.http;

import io.javalin.http.Context;

/** A body says its length first; what is longer than the route takes is not read. */
final class BodyLimit {
    private BodyLimit() {}

    static void check(Context context, int maxBytes) {
        long length = context.req().getContentLengthLong();
        if (length < 0 && context.header("Transfer-Encoding") != null) {
            throw new Refusal(411, "Say the length of what is sent: bodies of unknown length are not read.");
        }
        if (length > maxBytes) {
            throw new Refusal(
                    413, "At most " + maxBytes / 1024 + " kB can be sent here, but it was " + length / 1024 + " kB.");
        }
    }
}
