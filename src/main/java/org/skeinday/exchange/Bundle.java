package org.skeinday.exchange;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The same files as one JSON document: an event, a season or the whole record for another program or another laptop. Its
 * form is version {@link #VERSION}, told by {@link #schema} (JSON Schema, draft 2020-12). A cell that is a number and
 * nothing else is a number, any other a string, an empty one is left out; rules and errors are those of the files.
 */
public final class Bundle {
    public static final String FORMAT = "skeinday-bundle";
    public static final int VERSION = 1;
    private static final String ENDING = ".csv";
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
            .build();

    private Bundle() {}

    /**
     * Writes files as export makes them.
     *
     * @param about what it is, in words: the event's name, the days of a season, the whole record
     * @param texts by file name
     */
    public static String write(String about, Map<String, String> texts) {
        ObjectNode json = MAPPER.createObjectNode();
        json.put("format", FORMAT).put("version", VERSION).put("about", about);
        ObjectNode tables = json.putObject("tables");
        texts.forEach((file, text) -> table(tables.putArray(file.replace(ENDING, "")), file, text));
        return json.toPrettyString() + "\n";
    }

    private static void table(ArrayNode rows, String file, String text) {
        List<CellError> errors = new ArrayList<>();
        List<CsvLines.Line> lines = CsvLines.read(file, text, errors);
        if (!errors.isEmpty() || lines.isEmpty()) {
            throw new IllegalArgumentException("The texts must be as export writes them, but " + file + " was not");
        }
        List<String> header = lines.get(0).cells();
        for (CsvLines.Line line : lines.subList(1, lines.size())) {
            ObjectNode row = rows.addObject();
            for (int c = 0; c < line.cells().size(); c++) {
                String cell = CellText.unguarded(line.cells().get(c));
                if (!cell.isEmpty() && XlsxBook.isNumber(cell)) {
                    row.put(header.get(c), new BigDecimal(cell));
                } else if (!cell.isEmpty()) {
                    row.put(header.get(c), cell);
                }
            }
        }
    }

    /** @param name of the document, for its errors */
    public static Unpacked read(String name, String text) {
        JsonNode json;
        try {
            json = MAPPER.readTree(text);
        } catch (JsonProcessingException e) {
            return refused(name, "this is no JSON: " + where(e), "take it out of Skeinday again");
        }
        if (!json.path("format").asText().equals(FORMAT)) {
            return refused(name, "this JSON is no bundle of Skeinday", "its \"format\" must be \"" + FORMAT + "\"");
        }
        if (json.path("version").asInt() != VERSION || !json.path("version").isInt()) {
            return refused(
                    name,
                    "this bundle is of version " + json.path("version") + ", and this program reads version " + VERSION,
                    json.path("version").asInt() > VERSION
                            ? "take it in with the newer program that wrote it"
                            : "its \"version\" must be " + VERSION);
        }
        return tables(name, json.path("tables"));
    }

    private static String where(JsonProcessingException e) {
        return e.getLocation() == null
                ? "it ends too early"
                : "line " + e.getLocation().getLineNr() + ", column "
                        + e.getLocation().getColumnNr() + " cannot be read";
    }

    private static Unpacked tables(String name, JsonNode tables) {
        Map<String, String> texts = new LinkedHashMap<>();
        List<CellError> errors = new ArrayList<>();
        tables.fields().forEachRemaining(table -> {
            if (table.getValue().isArray() && table.getValue().isEmpty()) {
                return; // a file without rows is left out
            }
            if (table.getValue().isArray()) {
                texts.put(table.getKey() + ENDING, CsvLines.write(lines(table.getKey(), table.getValue(), errors)));
            } else {
                errors.add(new CellError(name, 0, table.getKey(), "this table is no array", "write its rows as [ … ]"));
            }
        });
        return errors.isEmpty() ? new Unpacked(texts, List.of()) : new Unpacked(Map.of(), errors);
    }

    private static List<List<String>> lines(String table, JsonNode rows, List<CellError> errors) {
        Set<String> header = new LinkedHashSet<>();
        rows.forEach(row -> row.fieldNames().forEachRemaining(header::add));
        List<List<String>> lines = new ArrayList<>();
        lines.add(header.stream().map(CellText::guarded).toList());
        for (JsonNode row : rows) {
            List<String> cells = new ArrayList<>();
            for (String column : header) {
                cells.add(CellText.guarded(cell(table, lines.size(), column, row.path(column), errors)));
            }
            if (!row.isObject()) {
                errors.add(new CellError(table, lines.size(), "", "this row is no object", "write it as { … }"));
            }
            lines.add(cells);
        }
        return lines;
    }

    private static String cell(String table, int row, String column, JsonNode value, List<CellError> errors) {
        if (value.isMissingNode() || value.isNull()) {
            return "";
        }
        if (value.isNumber()) {
            return PlainDigits.areTooMany(value.decimalValue())
                    ? value.decimalValue().toString()
                    : value.decimalValue().toPlainString();
        }
        if (!value.isTextual()) {
            errors.add(new CellError(
                    table, row, column, "a cell is a text or a number, but this is " + value, "write it as text"));
        }
        return value.asText();
    }

    private static Unpacked refused(String name, String wrong, String instead) {
        return new Unpacked(Map.of(), List.of(new CellError(name, 0, "", wrong, instead)));
    }

    /** The form of version {@link #VERSION}, made of the columns of the files. */
    public static String schema() {
        ObjectNode schema = MAPPER.createObjectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", "Bundle of Skeinday, version " + VERSION);
        schema.put("type", "object").put("additionalProperties", false);
        schema.putArray("required").add("format").add("version").add("tables");
        ObjectNode properties = schema.putObject("properties");
        properties.putObject("format").put("const", FORMAT);
        properties.putObject("version").put("const", VERSION);
        properties.putObject("about").put("type", "string").put("description", "What it is, in words");
        ObjectNode tables = properties.putObject("tables").put("type", "object").put("additionalProperties", false);
        ObjectNode each = tables.putObject("properties");
        DayFiles.known().forEach(file -> table(each.putObject(file.replace(ENDING, "")), DayFiles.file(file)));
        return schema.toPrettyString() + "\n";
    }

    private static void table(ObjectNode schema, DayFile file) {
        schema.put("type", "array");
        ObjectNode row = schema.putObject("items").put("type", "object").put("additionalProperties", false);
        ObjectNode columns = row.putObject("patternProperties");
        for (Column column : file.columns()) {
            ObjectNode cell = columns.putObject(pattern(column));
            cell.putArray("type").add("string").add("number");
            if (!column.otherwise().isEmpty()) {
                cell.put("description", "left out: " + column.otherwise());
            }
        }
    }

    /** A quantity's header carries its unit, unless each cell does. */
    private static String pattern(Column column) {
        return "^" + column.name() + (column.kind() == Column.Kind.PLAIN ? "" : "( \\([^)]+\\))?") + "$";
    }
}
