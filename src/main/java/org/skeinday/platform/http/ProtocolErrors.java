package org.skeinday.platform.http;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/**
 * What is answered to a request that no route ever sees, since it breaks the protocol itself: one plain sentence that says
 * nothing back of what was sent, with the headers of every other answer.
 */
final class ProtocolErrors extends ErrorHandler {
    private static final String SENTENCE =
            "This request could not be understood. Open the first page of this server.\n";

    @Override
    protected void generateResponse(
            Request request,
            Response response,
            int code,
            @Nullable String message,
            @Nullable Throwable cause,
            Callback callback) {
        headers(response.getHeaders());
        response.write(true, ByteBuffer.wrap(SENTENCE.getBytes(StandardCharsets.UTF_8)), callback);
    }

    @Override
    @SuppressWarnings("removal") // it is what the server asks as long as it is there
    public ByteBuffer badMessageError(int status, @Nullable String reason, HttpFields.Mutable fields) {
        headers(fields);
        return ByteBuffer.wrap(SENTENCE.getBytes(StandardCharsets.UTF_8));
    }

    private static void headers(HttpFields.Mutable fields) {
        Doorway.HEADERS.forEach((name, value) -> fields.put(new HttpField(name, value)));
        fields.put(HttpHeader.CONTENT_TYPE, "text/plain;charset=utf-8");
    }
}
