package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.cli.Commands;
import org.skeinday.cli.Skeinday;
import org.skeinday.prepare.FilledForms;

/** A hosted day of other teams, flown with two hand watches on each flight: what a chief decides of. */
public final class ChiefsDay implements AutoCloseable {
    public static final String EVENT = "Mudflat Open";
    public static final List<String> ENTRIES = List.of("Curlew", "Plover", "Avocet", "Dunlin", "Knot");

    public final Path folder;
    public App app;
    public Visitor laptop;
    public FilledForms forms;
    private long seeds = 500;

    /** @param rules the second line of {@code rules.csv} after the event's name, with its header: both may be empty */
    public ChiefsDay(Path folder, String header, String rules) throws Exception {
        this.folder = folder;
        Path files = Files.createDirectories(folder.resolveSibling("chiefs-files"));
        Files.writeString(
                files.resolve("event.csv"),
                "name,kind,day,hall,attempts,score,best of,timekeepers,take,if two,round,to,minimum\n" + EVENT
                        + ",hosting,2026-05-09,Saltmarsh Hall,2,sum,2,2,mean,mean,down,0.1,30\n");
        Files.writeString(files.resolve("rules.csv"), "event,repeats" + header + "\n" + EVENT + ",1" + rules + "\n");
        Files.writeString(
                files.resolve("terms.csv"),
                "event,protest minutes,sections,model least,reinspection\n" + EVENT + ",30,5.2,1.2 g,yes\n");
        var lines = new StringBuilder("event,entry,team,division\n");
        ENTRIES.forEach(e -> lines.append(EVENT + "," + e + ",Team of " + e + ",open\n"));
        Files.writeString(files.resolve("entries.csv"), lines);
        take(files);
        start();
    }

    private void take(Path files) throws IOException {
        var said = new StringWriter();
        int code = Skeinday.run(
                new String[] {"import", files.toString(), "--data", folder.toString()},
                new PrintWriter(said, true),
                new PrintWriter(said, true),
                Commands.all());
        assertEquals(0, code, said.toString());
    }

    private void start() throws Exception {
        app = Demo.startEmpty(Demo.withPin(folder), Clock.systemDefaultZone());
        laptop = new Visitor(app.port(), "", seeds++);
        forms = new FilledForms(laptop);
    }

    /** The same day once the program was started again on a database that is made anew. */
    public void rebuilt() throws Exception {
        app.close();
        try (var all = Files.list(folder)) {
            for (Path file : all.filter(f -> f.getFileName().toString().contains(".mv.db"))
                    .toList()) {
                Files.delete(file);
            }
        }
        start();
    }

    @Override
    public void close() throws IOException {
        app.close();
    }

    public HttpResponse<String> form(String path, Map<String, String> fields) throws Exception {
        return laptop.form(path, fields);
    }

    /** Taken, with what the page shows then. */
    public String done(String path, Map<String, String> fields) throws Exception {
        HttpResponse<String> answer = form(path, fields);
        assertTrue(answer.statusCode() < 300, path + ": " + answer.statusCode() + " " + answer.body());
        return answer.body();
    }

    /** Refused with these words. */
    public void refused(String words, String path, Map<String, String> fields) throws Exception {
        HttpResponse<String> answer = form(path, fields);
        assertTrue(answer.statusCode() == 422 || answer.statusCode() == 409, answer.statusCode() + " " + answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    public String entry(String name) throws Exception {
        return forms.row("entries", name).replaceFirst(".*/", "");
    }

    /** Called and released. @return the attempt's id */
    public String released(String entry) throws Exception {
        String called = done("/attempt/call", Map.of("entry", entry(entry)));
        String attempt = found(called, "name=\"attempt\" value=\"([^\"]+)\"");
        done("/attempt/move", Map.of("attempt", attempt, "to", "released"));
        return attempt;
    }

    /** Flown with these two hand watches and accepted. @return the attempt's id */
    public String flown(String entry, String one, String two) throws Exception {
        String attempt = released(entry);
        typed(attempt, "1", one);
        typed(attempt, "2", two);
        closed(attempt);
        return attempt;
    }

    public void typed(String attempt, String slot, String time) throws Exception {
        done("/attempt/type-time", Map.of("attempt", attempt, "typed-slot", slot, "typed", time));
    }

    public void closed(String attempt) throws Exception {
        done("/attempt/close", Map.of("attempt", attempt, "why", "hand watches, typed in afterwards"));
    }

    public String record(String attempt) throws Exception {
        return laptop.get("/attempt/" + attempt + "/part").body();
    }

    public String sheet() throws Exception {
        return laptop.get("/results/part").body();
    }

    /** Place and score by entry, as the file of the sheet has them. */
    public Map<String, String> places() throws Exception {
        Map<String, String> places = new HashMap<>();
        laptop.get("/results.csv").body().lines().skip(1).forEach(line -> {
            String[] cells = line.split(",", -1);
            places.put(cells[1], cells[0] + " " + cells[4]);
        });
        return places;
    }

    public void signed(String attempt) throws Exception {
        String seen = found(record(attempt), "name=\"seen\" value=\"(\\d+)\"");
        done("/attempt/" + attempt + "/sign", Map.of("as", "captain", "seen", seen, "pin", Demo.PIN));
    }

    public static String found(String html, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(html);
        assertTrue(found.find(), pattern + " in " + html);
        return found.group(1);
    }
}
