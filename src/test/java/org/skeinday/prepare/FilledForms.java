package org.skeinday.prepare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.Demo;
import org.skeinday.Visitor;

/** Fills the forms of Prepare as a browser does: every field that the page has, with what it shows, then what is typed. */
public final class FilledForms {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");
    private static final Pattern FORM = Pattern.compile("(?s)<form id=\"form\".*?</form>");
    private static final Pattern INPUT = Pattern.compile("(?s)<input([^>]*)>");
    private static final Pattern SELECT = Pattern.compile("(?s)<select id=\"[^\"]*\" name=\"([^\"]*)\".*?</select>");
    private static final Pattern CHOSEN = Pattern.compile("<option value=\"([^\"]*)\" selected>");

    private static final Pattern MOVES = Pattern.compile("name=\"moves\" value=\"([^\"]+)\"");

    private final Visitor visitor;

    public FilledForms(Visitor visitor) {
        this.visitor = visitor;
    }

    /** What the form at an address shows. */
    public Map<String, String> shown(String path) throws Exception {
        HttpResponse<String> page = visitor.get(path);
        assertEquals(200, page.statusCode(), page.body());
        Matcher form = FORM.matcher(page.body());
        assertTrue(form.find(), page.body());
        return fields(form.group());
    }

    static Map<String, String> fields(String form) {
        Map<String, String> fields = new LinkedHashMap<>();
        Matcher input = INPUT.matcher(form);
        while (input.find()) {
            String name = attribute(input.group(1), "name");
            boolean box = attribute(input.group(1), "type").equals("checkbox");
            if (!box || input.group(1).contains(" checked")) {
                String value = attribute(input.group(1), "value");
                fields.merge(name, value, (a, b) -> a + " | " + b);
            }
        }
        Matcher select = SELECT.matcher(form);
        while (select.find()) {
            Matcher chosen = CHOSEN.matcher(select.group());
            fields.put(select.group(1), chosen.find() ? unescaped(chosen.group(1)) : "");
        }
        return fields;
    }

    /** What the form that posts to {@code path} would send as it is shown, names that come more than once too. */
    public static String posted(String page, String path) {
        Matcher form = Pattern.compile("(?s)<form [^>]*hx-post=\"" + Pattern.quote(path) + "\".*?</form>")
                .matcher(page);
        assertTrue(form.find(), page);
        Matcher input = INPUT.matcher(form.group());
        List<String> sent = new ArrayList<>();
        while (input.find()) {
            sent.add(attribute(input.group(1), "name") + "="
                    + URLEncoder.encode(attribute(input.group(1), "value"), StandardCharsets.UTF_8));
        }
        return String.join("&", sent);
    }

    private static String attribute(String tag, String name) {
        Matcher found = Pattern.compile(" " + name + "=\"([^\"]*)\"").matcher(tag);
        return found.find() ? unescaped(found.group(1)) : "";
    }

    private static String unescaped(String text) {
        return text.replace("&#34;", "\"")
                .replace("&#39;", "'")
                .replace("&lt;", "<")
                .replace("&amp;", "&");
    }

    /** Sends the form for a new thing, or for the one at {@code path}. */
    public HttpResponse<String> save(String kind, String path, Map<String, String> typed) throws Exception {
        Map<String, String> fields = new HashMap<>(shown(path));
        fields.putAll(typed);
        return visitor.form("/prepare/" + kind + "/save", fields);
    }

    /** The same of rules that may be frozen: first without a word, then with what the form showed, a reason and the PIN. */
    public HttpResponse<String> saveFrozen(String kind, String path, Map<String, String> typed) throws Exception {
        HttpResponse<String> asked = save(kind, path, typed);
        if (asked.statusCode() == 204) {
            return asked;
        }
        assertEquals(422, asked.statusCode(), asked.body());
        Matcher moves = MOVES.matcher(asked.body());
        assertTrue(moves.find(), asked.body());
        Map<String, String> again = new HashMap<>(typed);
        again.put("moves", unescaped(moves.group(1)));
        again.put("frozen-why", "a misprint in the invitation");
        again.put("pin", Demo.PIN);
        return save(kind, path, again);
    }

    /** Adds a thing. */
    public void add(String kind, Map<String, String> typed) throws Exception {
        HttpResponse<String> saved = save(kind, "/prepare/" + kind + "/new", typed);
        assertEquals(204, saved.statusCode(), saved.body());
    }

    /** Moves the window of an entry to so many minutes from this one. @return when it closes */
    public LocalDateTime window(String entry, Clock clock, int from, int to) throws Exception {
        LocalDateTime minute = LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES);
        HttpResponse<String> saved = save(
                "windows",
                row("windows", entry),
                Map.of(
                        "frozen-why", "the hall is late",
                        "opens", MINUTE.format(minute.plusMinutes(from)),
                        "closes", MINUTE.format(minute.plusMinutes(to))));
        assertEquals(204, saved.statusCode(), saved.body());
        return minute.plusMinutes(to);
    }

    public HttpResponse<String> refused(String kind, Map<String, String> typed) throws Exception {
        return save(kind, "/prepare/" + kind + "/new", typed);
    }

    /** The address of the form of the thing that a list names. */
    public String row(String kind, String name) throws Exception {
        String list = visitor.get("/prepare/" + kind).body();
        Matcher found = Pattern.compile("<a href=\"([^\"]+)\">" + Pattern.quote(name) + "</a>")
                .matcher(list);
        assertTrue(found.find(), name + " in " + list);
        return found.group(1);
    }
}
