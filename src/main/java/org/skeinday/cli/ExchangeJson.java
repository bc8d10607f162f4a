package org.skeinday.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Map;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.DayFiles;
import org.skeinday.platform.record.Json;

/** What import and export say with {@code --json}. */
final class ExchangeJson {
    private ExchangeJson() {}

    /** {@code record} is 0 when nothing was taken; then {@code errors} says why. */
    static ObjectNode of(Exchange.Taken taken) {
        ObjectNode json = Json.MAPPER.createObjectNode();
        json.put("record", taken.n());
        files(json, taken.rows());
        ArrayNode errors = json.putArray("errors");
        for (CellError error : taken.errors()) {
            errors.addObject()
                    .put("file", error.file())
                    .put("line", error.line())
                    .put("column", error.column())
                    .put("wrong", error.wrong())
                    .put("right", error.right());
        }
        return json;
    }

    static ObjectNode of(DayFiles.Written written, Path dir) {
        ObjectNode json = Json.MAPPER.createObjectNode();
        json.put("folder", dir.toString());
        files(json, written.rows());
        return json;
    }

    private static void files(ObjectNode json, Map<String, Integer> rows) {
        ArrayNode files = json.putArray("files");
        rows.forEach((file, count) -> files.addObject().put("file", file).put("rows", count));
    }
}
