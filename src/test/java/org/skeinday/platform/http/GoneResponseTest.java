package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import io.javalin.http.Context;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class GoneResponseTest {
    @Test
    void the_servers_library_says_of_a_response_that_is_gone_what_the_error_pages_look_for() throws Exception {
        var kept = new CompletableFuture<Context>();
        Javalin server = Javalin.create(config -> {
                    config.startup.showJavalinBanner = false;
                    config.routes.get("/", context -> {
                        context.result("answered");
                        kept.complete(context);
                    });
                })
                .start("127.0.0.1", 0);
        try {
            URI address = URI.create("http://127.0.0.1:" + server.port() + "/");
            HttpClient.newHttpClient().send(HttpRequest.newBuilder(address).build(), BodyHandlers.ofString());
            String said = saidOnceGone(kept.get(10, TimeUnit.SECONDS));
            assertTrue(said.contains(ErrorPages.GONE_RESPONSE), said);
        } finally {
            server.stop();
        }
    }

    /** The response goes a moment after its last byte has been sent. */
    private static String saidOnceGone(Context context) throws InterruptedException {
        for (int i = 0; i < 500; i++) {
            try {
                context.status(500);
            } catch (IllegalStateException gone) {
                return String.valueOf(gone.getMessage());
            }
            Thread.sleep(20);
        }
        return "nothing: the response was there for 10 s";
    }
}
