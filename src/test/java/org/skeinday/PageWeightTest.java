package org.skeinday;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a page weighs over the hall's network, against {@code budget/pages.csv}: bytes as sent, compressed. */
@Timeout(60)
class PageWeightTest {
    private static final Pattern NAMED =
            Pattern.compile("<(?:link|script|img)\\b[^>]*?(?:href|src)=\"(/static/[^\"]+)\"");
    private static final Pattern IMPORTED = Pattern.compile("^import [^']*'\\./([a-z]+\\.js)'", Pattern.MULTILINE);
    private static final Pattern PART = Pattern.compile("data-refetch=\"([^\"]+)\"");
    private static final Pattern LINK = Pattern.compile("<a href=\"(/[a-z-]*)\"[ >]");

    @TempDir
    Path root;

    private final HttpClient client = HttpClient.newHttpClient();
    private final Map<String, Integer> budget = new LinkedHashMap<>();
    private final List<String> over = new ArrayList<>();
    private int port;

    @Test
    void every_page_keeps_its_budget() throws Exception {
        for (String line : Files.readAllLines(Path.of("src/test/resources/budget/pages.csv"))
                .subList(1, 6)) {
            budget.put(line.replaceFirst(",.*", ""), Integer.valueOf(line.replaceFirst(".*,", "")));
        }
        try (App app = Demo.start(root.resolve("day"))) {
            port = app.port();
            String first = text(fetch("/", false));
            Map<String, Integer> loaded = load("/", first);
            keep(
                    "first page compressed bytes",
                    "/",
                    loaded.values().stream().mapToInt(i -> i).sum());
            keep(
                    "script compressed bytes",
                    "/",
                    loaded.entrySet().stream()
                            .filter(e -> e.getKey().endsWith(".js"))
                            .mapToInt(Map.Entry::getValue)
                            .sum());
            keep("requests of the first page", "/", loaded.size());
            for (String page : found(LINK, first).distinct().toList()) {
                String html = text(fetch(page, false));
                keep("requests of any page of the bar", page, load(page, html).size());
                for (String part :
                        found(PART, html).map(p -> p.replace("&amp;", "&")).toList()) {
                    keep("fragment compressed bytes", part, fetch(part, true).length);
                }
            }
        }
        assertTrue(over.isEmpty(), String.join("\n", over));
    }

    private void keep(String what, String where, int is) {
        int most = budget.get(what);
        System.out.println(what + " " + where + ": " + is + " of " + most);
        if (is > most) {
            over.add(where + ": " + what + " must be at most " + most + ", but was " + is);
        }
    }

    private static Stream<String> found(Pattern pattern, String text) {
        return pattern.matcher(text).results().map((MatchResult found) -> found.group(1));
    }

    /** The page and all that it names, modules of modules too, by address. */
    private Map<String, Integer> load(String page, String html) throws Exception {
        Map<String, Integer> loaded = new LinkedHashMap<>();
        loaded.put(page, fetch(page, false).length);
        for (String named : found(NAMED, html).toList()) {
            loadFile(named, loaded);
        }
        return loaded;
    }

    private void loadFile(String file, Map<String, Integer> loaded) throws Exception {
        if (loaded.containsKey(file)) {
            return;
        }
        byte[] sent = fetch(file, false);
        loaded.put(file, sent.length);
        if (file.endsWith(".js")) {
            for (String imported : found(IMPORTED, text(sent)).toList()) {
                loadFile("/static/js/" + imported, loaded);
            }
        }
    }

    /** As a browser asks, that unpacks by itself. */
    private byte[] fetch(String path, boolean part) throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
                .header("Accept-Encoding", "gzip");
        if (part) {
            request.header("HX-Request", "true");
        }
        HttpResponse<byte[]> answer = client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        assertTrue(answer.statusCode() == 200, path + " " + answer.statusCode());
        boolean packed =
                answer.headers().firstValue("Content-Encoding").orElse("").equals("gzip");
        return packed ? answer.body() : pack(answer.body());
    }

    /** A small one goes as it is; its text is read from the same form as the others'. */
    private static byte[] pack(byte[] plain) throws IOException {
        var out = new ByteArrayOutputStream();
        try (var gzip = new GZIPOutputStream(out)) {
            gzip.write(plain);
        }
        return out.toByteArray();
    }

    private static String text(byte[] packed) throws IOException {
        try (var in = new GZIPInputStream(new java.io.ByteArrayInputStream(packed))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
