package org.skeinday.audit.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.attempt.web.HostedDay;
import org.skeinday.audit.AuditedKinds;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Whatever is changed stands in the audit: by whom, when, by which device, why, what it was and what it is. */
@Timeout(120)
class AuditWebTest {
    private static final String EVENT = "Mudflat Open";
    private static final String WHY = "a misprint in the invitation";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private FilledForms forms;

    @BeforeEach
    void start() throws Exception {
        app = Demo.startEmpty(Demo.withPin(HostedDay.into(root.resolve("day"), 6, 2, 31)), Clock.systemDefaultZone());
        laptop = new Visitor(app.port(), "", 1);
        forms = new FilledForms(laptop);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private List<NamedCsvRecord> audit(String of) throws Exception {
        HttpResponse<String> file = laptop.get("/audit.csv" + of);
        assertEquals(200, file.statusCode());
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(file.body())) {
            return reader.stream().toList();
        }
    }

    /** The rows since there were so many. */
    private List<String> since(int before) throws Exception {
        return audit("").stream()
                .skip(before)
                .map(r -> Stream.of("of", "what", "done", "field", "before", "after", "reason")
                        .map(r::getField)
                        .collect(Collectors.joining("|")))
                .toList();
    }

    private void save(String kind, String row, Map<String, String> change) throws Exception {
        HttpResponse<String> saved = forms.saveFrozen(kind, row, change);
        assertEquals(204, saved.statusCode(), saved.body());
    }

    private void done(String path, Map<String, String> fields) throws Exception {
        HttpResponse<String> answer = laptop.form(path, fields);
        assertTrue(answer.statusCode() < 300, path + ": " + answer.statusCode() + " " + answer.body());
    }

    private String officialAttempt() throws Exception {
        return laptop.get("/desk/part").body().replaceFirst("(?s).*?name=\"times\" value=\"(\\S+) .*", "$1");
    }

    @Test
    void a_change_of_the_rules_says_each_field_before_and_after() throws Exception {
        int before = audit("").size();
        save("events", forms.row("events", EVENT), Map.of("minimum", "1:00", "timekeepers", "3"));
        save("rules", forms.row("rules", EVENT), Map.of("repeats", "2"));
        save("terms", "/prepare/terms/new", Map.of("event", EVENT, "protest-minutes", "30"));
        assertEquals(
                List.of(
                        "rules|Mudflat Open|event changed|timekeepers|2|3|" + WHY,
                        "rules|Mudflat Open|event changed|minimum|0:30|1:00|" + WHY,
                        "rules|Mudflat Open|rules changed after the first official flight|moved||No time and no place changes.|"
                                + WHY,
                        "rules|Mudflat Open|flight rules set|repeats of a flight|1|2|" + WHY),
                since(before).subList(0, 4));
        assertTrue(
                since(before).contains("rules|Mudflat Open|conditions set|time to protest, min||30|" + WHY),
                since(before).toString());
    }

    @Test
    void an_entry_and_its_window_are_told_from_the_first_word_to_the_removal() throws Exception {
        int before = audit("").size();
        forms.add("entries", Map.of("event", EVENT, "entry", "Heron", "team", "Team 9"));
        forms.add(
                "windows",
                Map.of("event", EVENT, "entry", "Heron", "opens", "2026-05-09 11:00", "closes", "2026-05-09 11:20"));
        save("windows", forms.row("windows", "Heron"), Map.of("closes", "2026-05-09 11:30", "frozen-why", WHY));
        save("entries", forms.row("entries", "Heron"), Map.of("entry", "Grey Heron"));
        for (String kind : List.of("windows", "entries")) {
            String row = forms.row(kind, "Grey Heron");
            done("/prepare/" + kind + "/remove", forms.shown(row));
        }
        List<String> told = since(before);
        assertTrue(told.contains("entries|Heron|entry added|name||Heron|"), told.toString());
        assertTrue(told.contains("windows|Window|window added|closes||2026-05-09 11:20:00|"), told.toString());
        assertTrue(
                told.contains("windows|Window|window moved|closes|2026-05-09 11:20:00|2026-05-09 11:30:00|" + WHY),
                told.toString());
        assertTrue(told.contains("entries|Grey Heron|entry changed|name|Heron|Grey Heron|"), told.toString());
        assertTrue(told.contains("entries|Grey Heron|entry removed|name|Grey Heron||"), "it is named: " + told);
        assertTrue(told.contains("windows|Window|window removed|opens|2026-05-09 11:00:00||"), told.toString());
    }

    @Test
    void a_result_its_signature_and_its_protest_are_told_with_who_and_why() throws Exception {
        String attempt = officialAttempt();
        String page = laptop.get("/attempt/" + attempt + "/part").body();
        String seen = page.replaceFirst("(?s).*?name=\"seen\" value=\"(\\d+)\".*", "$1");
        int before = audit("").size();
        done("/attempt/" + attempt + "/sign", Map.of("as", "captain", "seen", seen, "pin", Demo.PIN));
        done("/attempt/" + attempt + "/protest", Map.of("words", "Team 3: it touched the beam"));
        String protest = laptop.get("/attempt/" + attempt + "/part")
                .body()
                .replaceFirst("(?s).*?name=\"protest\" value=\"([^\"]+)\".*", "$1");
        done("/attempt/" + attempt + "/settle", Map.of("protest", protest, "how", "the jury: it stands"));
        done("/attempt/" + attempt + "/reopen", Map.of("reason", "a watch was misread", "pin", Demo.PIN));
        List<String> told = since(before);
        String title = audit("").get(before).getField("what");
        assertEquals("signatures|" + title + "|signed|as||captain|", told.get(0));
        assertEquals("results|" + title + "|protest|protest||Team 3: it touched the beam|", told.get(1));
        assertEquals("results|" + title + "|protest|settled||the jury: it stands|", told.get(2));
        assertTrue(
                told.get(3)
                        .matches(
                                "results\\|.*\\|opened again\\|official time\\|\\d+:\\d\\d(\\.\\d)?\\|\\|a watch was misread"),
                told.get(3));
        assertEquals("laptop", audit("").get(before).getField("device"));
        String shown = laptop.get("/audit").body();
        assertTrue(
                shown.contains("<a href=\"/attempt/" + attempt + "\"><b>" + title + "</b></a> opened again")
                        && shown.contains("“a watch was misread”"),
                shown);
    }

    @Test
    void rights_are_told_and_no_secret_with_them() throws Exception {
        int before = audit("").size();
        Demo.joined(app, "timekeeper", "", 32);
        done("/laptop/lend", Map.of());
        done("/laptop/back", Map.of("pin", Demo.PIN));
        String device = laptop.get("/devices").body().replaceFirst("(?s).*hx-post=\"/devices/([^\"]+)/end\".*", "$1");
        done("/devices/" + device + "/end", Map.of());
        List<String> told = since(before);
        assertTrue(told.stream().anyMatch(r -> r.contains("|device joined|role||")), told.toString());
        assertTrue(told.contains("rights|Laptop|laptop lent or taken back|lent||yes|"), told.toString());
        assertTrue(told.contains("rights|Laptop|laptop lent or taken back|lent|yes|no|"), told.toString());
        assertTrue(told.stream().anyMatch(r -> r.contains("|device ended|role|timekeeper||")), told.toString());
        assertFalse(laptop.get("/audit.csv").body().matches("(?s).*[0-9a-f]{64}.*"), "the hash of a token");
    }

    @Test
    void it_can_be_looked_at_by_what_was_changed_and_page_by_page() throws Exception {
        assertEquals(
                audit("").stream()
                        .filter(r -> r.getField("of").equals("entries"))
                        .count(),
                audit("?of=entries").size());
        String page = laptop.get("/audit?of=results").body();
        assertTrue(page.contains("changes of results"), page);
        for (int i = 0; i < 32; i++) {
            save("rules", forms.row("rules", EVENT), Map.of("repeats", String.valueOf(2 + i % 2)));
        }
        String first = laptop.get("/audit?of=rules").body();
        assertTrue(first.contains("/audit?of=rules&amp;after=60"), first);
        assertTrue(laptop.get("/audit?of=rules&after=60").body().contains("Later ones"));
    }

    /** Whatever else the other tests leave out: the record itself says what there is to tell. */
    @Test
    void each_line_of_the_record_that_changes_something_stands_there_after_a_rebuild_too() throws Exception {
        String attempt = officialAttempt();
        done("/attempt/" + attempt + "/reopen", Map.of("reason", "a watch was misread"));
        save("events", forms.row("events", EVENT), Map.of("minimum", "1:00"));
        Demo.joined(app, "captain", "", 32);
        String told = laptop.get("/audit.csv").body();
        var lines = new TreeSet<Long>();
        audit("").forEach(r -> lines.add(Long.parseLong(r.getField("record"))));
        assertEquals(linesThatChange(), List.copyOf(lines));
        app.close();
        try (Stream<Path> files = Files.list(root.resolve("day"))) {
            for (Path file : files.filter(f -> f.getFileName().toString().contains(".mv.db"))
                    .toList()) {
                Files.delete(file);
            }
        }
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 99);
        assertEquals(told, laptop.get("/audit.csv").body());
    }

    private List<Long> linesThatChange() throws Exception {
        List<Long> lines = new ArrayList<>();
        for (String line : Files.readAllLines(root.resolve("day/journal.jsonl"))) {
            JsonNode json = Json.MAPPER.readTree(line);
            for (JsonNode fact : json.path("facts")) {
                if (AuditedKinds.ALL.containsKey(fact.path("kind").asText())
                        && !lines.contains(json.path("n").asLong())) {
                    lines.add(json.path("n").asLong());
                }
            }
        }
        return lines;
    }
}
