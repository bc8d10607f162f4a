package org.skeinday.access;

import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import org.skeinday.TapTable;
import org.skeinday.Visitor;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Json;

/** Asks every route with what nobody would type. The seed says it all: the same one asks the same again. */
final class Fuzz {
    static final List<String> HOSTILE = List.of(
            "",
            " ",
            "0",
            "-1",
            "1",
            "3",
            "99999999999999999999",
            "1e308",
            "NaN",
            "1/0",
            "0.0000001",
            "٣",
            "yes",
            "on",
            "' or 1=1 --",
            "\"><script>alert(1)</script>",
            "${7*7}",
            "{{7*7}}",
            "\u0000",
            "a\u0000b",
            "\u202egnp.exe",
            "=1+1",
            "+1",
            "-1+1",
            "@sum",
            "\tx",
            "😀",
            "e\u0301",
            "../../etc/passwd",
            "%00",
            "%",
            "null",
            "{}",
            "[]",
            "2026-13-45",
            "25:61",
            "1:61",
            "1:02.34",
            "\r\nSet-Cookie: a=b",
            "x".repeat(500),
            "x".repeat(10_000),
            "\uD800");

    private final House house;
    private final SplittableRandom random;
    private final Map<String, Map<String, String>> forms = new HashMap<>();
    private final List<String> names;
    private final List<String> found = new ArrayList<>();
    private final List<Visitor> who;
    private final Map<String, Integer> answers = new TreeMap<>();

    Fuzz(House house, long seed) throws Exception {
        this.house = house;
        this.random = new SplittableRandom(seed);
        Crawl crawl = Crawl.of(house, house.laptop);
        forms.putAll(crawl.forms());
        TreeSet<String> all = new TreeSet<>();
        forms.values().forEach(fields -> all.addAll(fields.keySet()));
        this.names = List.copyOf(all);
        this.who = List.of(house.laptop, house.joined("helper"), house.joined("timekeeper"), house.joined("captain"));
    }

    /** What was found wrong: an answer over 499, or a refusal that changed the record. */
    List<String> ask(int requests) throws Exception {
        for (int i = 0; i < requests; i++) {
            try {
                one();
            } catch (IOException e) { // the server closed a connection just when it was used again
                one();
            }
        }
        return found;
    }

    /** How many answers of each kind there were, by method and status. */
    Map<String, Integer> answers() {
        return answers;
    }

    private void one() throws Exception {
        Routes.Right right = any(house.rights());
        Visitor asker = any(who);
        String path = path(right);
        long before = Files.size(house.folder.resolve("journal.jsonl"));
        HttpResponse<String> answer;
        String sent;
        if (right.method().equals("GET")) {
            path += "?" + query();
            sent = "";
            answer = asker.get(path, "Cookie", any(List.of("units=inch", "units=" + random.nextInt(), "skeinday=x")));
        } else if (right.maxBytes() == Routes.IMPORT_BODY) {
            byte[] bytes = new byte[random.nextInt(3000)];
            random.nextBytes(bytes);
            sent = any(List.of(
                    "entries.csv",
                    "motors.csv",
                    "season.xlsx",
                    "../crew.csv",
                    any(HOSTILE).replaceAll("[\r\n\"]", "")));
            answer = asker.upload(path, sent, random.nextBoolean() ? bytes : rows(), fields(path));
        } else if (right.path().startsWith("/taps")) {
            sent = taps();
            answer = asker.post(path, sent);
        } else {
            Map<String, String> fields = fields(path);
            sent = fields.toString();
            answer = asker.form(path, fields);
        }
        answers.merge(right.method() + " " + answer.statusCode(), 1, Integer::sum);
        boolean changed = before != Files.size(house.folder.resolve("journal.jsonl"));
        boolean reads = right.method().equals("GET");
        if (answer.statusCode() >= 500 || (changed && (reads || answer.statusCode() >= 400))) {
            found.add(right.method() + " " + path + " " + cut(sent) + ": " + answer.statusCode()
                    + (changed ? " and changed" : "") + " " + cut(answer.body().replaceAll("(?s).*<main", "")));
        }
    }

    /** A file that looks like one of ours. */
    private byte[] rows() {
        String header =
                any(List.of("event,entry,team,own", "tag,batch,team,direction,loop (in),mass (g)", "person,name"));
        StringBuilder text = new StringBuilder(header).append('\n');
        for (int i = 0; i < 5; i++) {
            text.append(any(HOSTILE)).append(',').append(any(HOSTILE)).append(",\"x\n");
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String cut(String text) {
        return text.length() > 300 ? text.substring(0, 300) + "…" : text;
    }

    private <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    /** With ids that are there, most of the time. */
    private String path(Routes.Right right) {
        String path = house.filled(right);
        if (random.nextInt(4) == 0 && right.path().contains("{")) {
            String strange = URLEncoder.encode(any(HOSTILE).replace("\uD800", "x"), StandardCharsets.UTF_8);
            path = right.path()
                    .replaceAll("\\{[^}]*}", strange.replace("+", "%20").replace("$", "\\$"));
        }
        return path;
    }

    private String query() {
        StringBuilder query = new StringBuilder();
        for (String name : List.of("attempt", "motor", "model", "entry", "q", "day", "event", any(names))) {
            if (random.nextInt(3) == 0) {
                query.append(name).append('=').append(encoded(any(HOSTILE))).append('&');
            }
        }
        return query.toString();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text.length() > 2_000 ? "x" : text, StandardCharsets.UTF_8);
    }

    private Map<String, String> fields(String path) {
        Map<String, String> fields = new LinkedHashMap<>(forms.getOrDefault(path, Map.of()));
        fields.remove("act");
        for (String name : List.copyOf(fields.keySet())) {
            int what = random.nextInt(3);
            if (what == 0) {
                fields.put(name, any(HOSTILE));
            } else if (what == 1 && random.nextInt(4) == 0) {
                fields.remove(name);
            }
        }
        if (random.nextInt(4) == 0) {
            fields.put(any(names), any(HOSTILE));
        }
        return fields;
    }

    /** Taps of any kind with some of the contents that taps have. */
    private String taps() {
        var taps = Json.MAPPER.createArrayNode();
        for (int i = random.nextInt(4); i >= 0; i--) {
            var content = Json.MAPPER.createObjectNode();
            for (String name : List.of(
                    "attempt",
                    "motor",
                    "wind",
                    "slot",
                    "ms",
                    "step",
                    "deed",
                    "run",
                    "item",
                    "what",
                    "serverMs",
                    "boundMs",
                    "elapsedMs",
                    "phase",
                    "reason",
                    "seen")) {
                switch (random.nextInt(6)) {
                    case 0 -> content.put(name, any(HOSTILE).replace("\uD800", "?"));
                    case 1 -> content.put(name, random.nextLong());
                    case 2 -> content.put(name, house.attempt);
                    case 3 -> content.putArray(name);
                    case 4 -> content.put(name, random.nextInt(3));
                    default -> content.remove(name);
                }
            }
            String kind = any(List.copyOf(new TreeSet<>(TapTable.rights().keySet())));
            taps.add(Visitor.tap(any(who).newId(), random.nextInt(9) == 0 ? "no.such" : kind, content));
        }
        var body = Json.MAPPER.createObjectNode().put("device", any(List.of("laptop", "x", "")));
        body.set("taps", taps);
        return random.nextInt(9) == 0 ? body.toString().substring(1) : body.toString();
    }
}
