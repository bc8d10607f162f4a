package org.skeinday.prepare.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.Sheet;
import org.skeinday.prepare.TypedUnits;

/** What a row's form brings, and which row of what it is about. */
final class RowForm {
    private static final TypeReference<Map<String, String>> CELLS = new TypeReference<>() {};

    private RowForm() {}

    /** @throws Refusal for a kind that nobody prepares */
    static Sheet thing(Context ctx) {
        return Sheet.ofPath(ctx.pathParam("kind"))
                .orElseThrow(() -> Refusal.notFound("Nothing of that name is prepared here."));
    }

    /** Empty when there is no such row any more. */
    static Optional<DayRows.RowText> row(PrepareContext desk, Sheet thing, Day day, String id) {
        return id.isEmpty() ? Optional.empty() : DayRows.one(day, desk.zone(), thing.file(), id);
    }

    /** Cells as they were typed, by column. */
    static Map<String, String> typed(Context ctx, Sheet thing) {
        Map<String, String> typed = new LinkedHashMap<>();
        for (Column column : DayRows.columns(thing.file())) {
            List<String> values = ctx.formParams(Fields.parameter(column.name()));
            String text = String.join(" | ", values).strip();
            typed.put(column.name(), TypedUnits.cell(column, text, under(ctx, column)));
        }
        return typed;
    }

    /** The unit that stood under the field: the form brings it, since the team may have chosen another meanwhile. */
    private static String under(Context ctx, Column column) {
        String shown = ctx.formParam("unit-" + Fields.parameter(column.name()));
        return shown == null ? TypedUnits.under(column, ReaderUnits.of(ctx)) : shown;
    }

    /** What stands in the address of a form: typed before it was asked for again. */
    static Map<String, String> asked(Context ctx, Sheet thing) {
        Map<String, String> asked = new LinkedHashMap<>();
        for (Column column : DayRows.columns(thing.file())) {
            List<String> values = ctx.queryParams(Fields.parameter(column.name()));
            if (!values.isEmpty()) {
                asked.put(column.name(), String.join(" | ", values).strip());
            }
        }
        return asked;
    }

    static String param(Context ctx, String name) {
        String value = ctx.formParam(name);
        return value == null ? "" : value;
    }

    /** Cells as a form hides them: what it showed. */
    static String json(Map<String, String> cells) {
        return Json.MAPPER.valueToTree(new TreeMap<>(cells)).toString();
    }

    /** The same read again; null where the form showed none. */
    static @Nullable Map<String, String> cells(String json) {
        if (json.isEmpty()) {
            return null;
        }
        try {
            return Json.MAPPER.readValue(json, CELLS);
        } catch (JsonProcessingException e) {
            throw Refusal.malformed("This form came without what it had shown. Load the page again and repeat it.");
        }
    }
}
