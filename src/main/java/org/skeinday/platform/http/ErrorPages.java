package org.skeinday.platform.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.util.Map;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.eclipse.jetty.io.QuietException;
import org.skeinday.platform.db.DatabaseTrouble;
import org.skeinday.platform.record.Json;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The one translator from exception to answer. No trace and no SQL ever reaches a page. */
final class ErrorPages {
    private static final Logger LOG = LoggerFactory.getLogger(ErrorPages.class);
    /**
     * Jetty says by these words alone, and by no type of its own, that a response does not exist any more: {@code
     * GoneResponseTest} fails when a newer one says it otherwise.
     */
    static final String GONE_RESPONSE = "recycled";

    private static final Map<Integer, String> HEADINGS = Map.of(
            400, "Not understood",
            401, "Not joined",
            403, "Not allowed",
            404, "Nothing here",
            405, "Not served",
            409, "Changed by someone else",
            411, "Length missing",
            413, "Too large",
            421, "Wrong address",
            429, "Too often");

    private final Page page;
    private final Supplier<String> references;

    ErrorPages(Page page, Supplier<String> references) {
        this.page = page;
        this.references = references;
    }

    void register(RoutesConfig routes) {
        routes.exception(
                Refusal.class,
                (error, context) -> answer(context, error.status(), error.heading(), error.sentence(), ""));
        routes.exception(DatabaseTrouble.class, (error, context) -> {
            LOG.warn("Not read at {}", routeOf(context), error);
            answer(context, 503, "The record is just being opened again. Try in a moment.", "");
        });
        routes.exception(IOException.class, this::orNotArrived);
        routes.exception(HttpResponseException.class, (error, context) -> ofFrame(context, error));
        routes.exception(Exception.class, this::orGone);
    }

    private void ofFrame(Context context, HttpResponseException error) {
        switch (error.getStatus()) {
            case 404 -> answer(context, 404, "There is no such page.", "");
            case 413 -> answer(context, 413, "That is more than can be sent here.", "");
            default -> answer(context, error.getStatus(), "This request could not be served.", "");
        }
    }

    /**
     * A stream whose page has gone ends here with a response that does not exist any more. Nothing may be thrown then:
     * Javalin would hand that to this very method again, and again, on a thread that never ends.
     */
    private void orGone(Exception error, Context context) {
        try {
            if (!(error instanceof IllegalStateException)
                    || !String.valueOf(error.getMessage()).contains(GONE_RESPONSE)) {
                unexpected(context, error);
            }
        } catch (RuntimeException gone) {
            LOG.debug("Nobody is there any more to be answered", gone);
        }
    }

    /** A device that went away, or sends nothing for too long, while its request was read: no error of ours. */
    private void orNotArrived(IOException error, Context context) {
        boolean gone = error instanceof QuietException || error.getCause() instanceof TimeoutException;
        if (gone) {
            answer(context, 408, "This request did not arrive whole. Send it again.", "");
        } else {
            orGone(error, context);
        }
    }

    private void unexpected(Context context, Exception error) {
        String reference = references.get();
        String where = context.req().getMethod() + " " + routeOf(context);
        LOG.error("Error {} at {}", reference, where, error);
        answer(context, 500, "Something went wrong here, not with what you did. Try again; tell the coach.", reference);
    }

    /** As the route is written, not as it was asked: what stands in an address may be anything. */
    private static String routeOf(Context context) {
        var endpoint = context.endpoints().lastHttpEndpoint();
        return endpoint == null ? "an unknown address" : endpoint.path;
    }

    private void answer(Context context, int status, String sentence, String reference) {
        answer(context, status, "", sentence, reference);
    }

    private void answer(Context context, int status, String heading, String sentence, String reference) {
        context.status(status);
        context.header("Cache-Control", "no-store");
        if ("1".equals(context.header("X-Skeinday"))) {
            context.contentType("application/json")
                    .result(Json.MAPPER
                            .createObjectNode()
                            .put("error", sentence)
                            .put("reference", reference)
                            .toString());
            return;
        }
        String above = heading.isEmpty() ? HEADINGS.getOrDefault(status, "Something went wrong") : heading;
        ErrorView view = new ErrorView(above, sentence, reference);
        if ("true".equals(context.header("HX-Request"))) {
            page.fragment(context, "layout/_error.jte", view);
        } else {
            page.show(context, view.heading(), "layout/error.jte", view);
        }
    }
}
