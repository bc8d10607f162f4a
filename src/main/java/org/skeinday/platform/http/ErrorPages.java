package org.skeinday.platform.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The one translator from what went wrong to a page; no trace and no SQL ever reaches one. */
final class ErrorPages {
    private static final Logger LOG = LoggerFactory.getLogger(ErrorPages.class);

    private final Pages pages;
    private final Access access;

    ErrorPages(Pages pages, Access access) {
        this.pages = pages;
        this.access = access;
    }

    void register(RoutesConfig routes) {
        routes.exception(Problem.class, (problem, ctx) -> show(ctx, problem));
        routes.exception(HttpResponseException.class, (e, ctx) -> show(ctx, ofStatus(e.getStatus())));
        routes.exception(Exception.class, (e, ctx) -> show(ctx, fault(e)));
    }

    private static Problem ofStatus(int status) {
        return switch (status) {
            case 404 -> Problem.notFound("There is no such page. The bar above leads to those that there are.");
            case 413 -> new Problem(413, "Too large", "This is larger than what is taken here. Send less at a time.");
            default -> new Problem(status, "Not possible", "This cannot be done here.");
        };
    }

    private Problem fault(Exception e) {
        String reference = pages.newActId().substring(0, 8);
        LOG.error("Reference {}", reference, e);
        return new Problem(
                500,
                "A fault of the program",
                "Nothing was changed. Try once more; if it stays, tell whoever looks after Skeinday the reference "
                        + reference + ".");
    }

    private void show(Context ctx, Problem problem) {
        ctx.status(problem.status());
        Caller caller = problem.status() == 421 ? Caller.NOBODY : access.caller(ctx);
        if (ctx.header("X-Skeinday") != null) {
            ctx.contentType("text/plain; charset=utf-8").result(problem.words());
            return;
        }
        pages.show(ctx, "layout/problem", new ProblemView(pages.frame(problem.title(), "", caller), problem.words()));
    }
}
