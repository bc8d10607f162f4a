package org.skeinday.prepare.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.javalin.http.Context;
import java.util.function.Function;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.attempt.ResultState;
import org.skeinday.attempt.web.ResultPages;
import org.skeinday.exchange.ResultTable;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Json;

/** The result sheet to take along: what counts and why, so that anybody can count it again. For spectators too. */
public final class ResultFilePages {
    private final PrepareContext desk;

    public ResultFilePages(PrepareContext desk) {
        this.desk = desk;
    }

    public void register(Routes routes) {
        routes.get(
                "/results.csv",
                Role.SPECTATOR,
                ctx -> file(ctx, "text/csv; charset=utf-8", "results.csv", sheet -> ResultTable.csv(sheet, state())));
        routes.get(
                "/results.json",
                Role.SPECTATOR,
                ctx -> file(
                        ctx,
                        "application/json",
                        "results.json",
                        sheet -> json(ResultTable.document(
                                sheet,
                                state(),
                                ResultPages.rules(desk.record()),
                                ResultPages.changes(desk.record(), desk.zone())))));
    }

    private ResultState state() {
        return ResultPages.standing(desk.record(), desk.zone())
                .orElseThrow(ResultFilePages::noEvent)
                .state();
    }

    private static Refusal noEvent() {
        return Refusal.notFound("There is no event yet, and so no result.");
    }

    private static String json(Object document) {
        try {
            return Json.MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(document) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e); // maps, lists, texts and numbers can always be written
        }
    }

    private void file(Context ctx, String type, String name, Function<ResultSheet, String> written) {
        ResultSheet sheet =
                ResultPages.sheet(desk.record(), ctx.queryParam("division")).orElseThrow(ResultFilePages::noEvent);
        ctx.contentType(type);
        ctx.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
        ctx.result(written.apply(sheet));
    }
}
