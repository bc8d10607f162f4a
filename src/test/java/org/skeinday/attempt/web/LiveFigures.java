package org.skeinday.attempt.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.Visitor;

/** What every page says of one attempt: by figure, then by page. A page that does not show a figure is not among them. */
final class LiveFigures {
    private static final Map<String, String> PAGES = Map.of(
            "now", "/now?attempt=",
            "timing", "/timing/part?attempt=",
            "winding", "/winding/part?flight=",
            "checks", "/checks/part?subject=",
            "record", "/attempt/");

    private final Map<String, Map<String, String>> found = new TreeMap<>();

    private LiveFigures() {}

    /** @param title entry and attempt, by which a page that is about another one is passed over */
    static LiveFigures of(Visitor who, String attempt, String title) throws Exception {
        return of(new ReadOnce(who), attempt, title);
    }

    /** The same of one of several attempts: pages about all of them are read once. */
    static LiveFigures of(ReadOnce pages, String attempt, String title) throws Exception {
        var figures = new LiveFigures();
        for (Map.Entry<String, String> page : new TreeMap<>(PAGES).entrySet()) {
            String html = pages.at(page.getValue() + attempt);
            if (isAbout(html, title)) {
                figures.read(page.getKey(), html);
            }
        }
        String results = pages.at("/results");
        figures.cell(results, attempt, title);
        figures.strip("results", results, attempt);
        String day = pages.at("/day/part");
        figures.strip("day", day, attempt);
        figures.put("motor", "day, motors", day, "<dt>" + title + "</dt><dd>motor ([^,<]+)[,<]");
        figures.onBench(pages.at("/bench/part"), title);
        figures.onWall(pages.at("/results/wall/part"), title);
        figures.put(
                "rule number", "results", results, "<dt><a href=\"/attempt/" + attempt + "\">[^<]*?, (attempt [^<]+)<");
        return figures;
    }

    /** Where the attempts stand that are under way, on pages about the whole day. */
    private void strip(String page, String html, String attempt) {
        Pattern.compile("(?s)<div class=\"under-way\"><p><a class=\"link\" href=\"/attempt/" + attempt
                        + "\">(.*?)</div>")
                .matcher(html)
                .results()
                .forEach(found -> {
                    put("phase", page + ", strip", found.group(1), "aria-current=\"step\">([^<]+)<");
                    put("rule number", page + ", strip", found.group(1), "^[^<]*?, (attempt [^<]+)<");
                });
    }

    /** The motor that is in its hands, with where it stands. */
    private void onBench(String html, String title) {
        Matcher row = Pattern.compile("<p class=\"motor-tag\"><a [^>]*>([^<]+)</a></p>\\s*<p class=\"motor-state\">.*?"
                        + "<span class=\"motor-need\">in " + Pattern.quote(title) + ": ([^<]+)<")
                .matcher(html);
        while (row.find()) {
            put("motor", "bench", row.group(1), "(.+)");
            put("phase", "bench", row.group(2), "(.+)");
        }
    }

    /** The head is about one of those under way; below it each try stands in the column of its number. */
    private void onWall(String html, String title) {
        String entry = title.replaceFirst(",.*", "");
        String words = title.replaceFirst(".*?, ", "");
        put(
                "phase",
                "wall",
                html,
                "<p class=\"wall-sub\">([^<]+) · " + words + "</p>\\s*<h1>" + Pattern.quote(entry) + "</h1>");
        Matcher row = Pattern.compile("(?s)<th scope=\"row\">" + Pattern.quote(entry) + "</th>(.*?)</tr>")
                .matcher(html);
        if (row.find()) {
            int number = Integer.parseInt(words.replaceAll("attempt (\\d+).*", "$1"));
            List<String> tries = Pattern.compile("<span class=\"try\"><span[^>]*>([^<]+)</span>")
                    .matcher(row.group(1).split("</td>")[number - 1])
                    .results()
                    .map(found -> found.group(1))
                    .toList();
            int which = words.contains("try") ? Integer.parseInt(words.replaceAll(".*, (\\d+).*", "$1")) : 1;
            if (which <= tries.size() && !tries.get(which - 1).equals("–")) { // what uses up no flight is not on it
                timeOrPhase("wall, sheet", tries.get(which - 1));
            }
        }
    }

    /** And not about the next try of the same attempt. */
    private static boolean isAbout(String html, String title) {
        return html.contains("<h1>" + title + " ")
                || html.contains("<h1>" + title + "<")
                || html.contains("\"Where " + title + " stands\"");
    }

    private void cell(String html, String attempt, String title) {
        Matcher cell = Pattern.compile("href=\"/attempt/" + attempt + "\"[^>]*>\\(?([^<()]+)\\)?<")
                .matcher(html);
        while (cell.find() && !cell.group(1).equals(title)) {
            timeOrPhase("results", cell.group(1));
        }
    }

    /** A cell of the result sheet has the official time, in brackets where it is no official flight; else the phase. */
    private void timeOrPhase(String page, String words) {
        String bare = words.replaceAll("[()]", "").strip();
        put(bare.matches("[\\d:.]+") ? "official time" : "phase", page, bare, "(.+)");
    }

    private void read(String page, String html) {
        put("phase", page, html, List.of("aria-current=\"step\">([^<]+)<", "<li class=\"done\">([^<]+)</li>\\s*</ol>"));
        put(
                "official time",
                page,
                html,
                List.of("<h1>[^<]+<span class=\"state now\">([\\d:.]+)<", "Official time: ([\\d:.]+\\d)"));
        put("judged", page, html, "(Released [^.<]*(?:window|window of [^.<]*))[.<]");
        put("rule number", page, html, "<h1>[^<]*?, (attempt \\d+(?:, \\d+\\w\\w try)?)");
        put("winds and reads", page, html, "<dt>winds / reads</dt><dd>([^<]+)<");
        put("wound at", page, html, "<dt>wound at</dt><dd>([^<]+)<");
        put("loads and releases", page, html, "<dt>loads / releases</dt><dd>([^<]+)<");
        put(
                "times, watch 1",
                page,
                html,
                List.of("Watch 1</span> taken by ([^<]+)<", "<dt>watch 1, (?!hand watch)([^<,\\d][^<,]*)[<,]"));
        put("aloft", page, html, "<dt>aloft</dt><dd>([^<]*?)(?:\\. By the rules[^<]*)?<");
        put("motor", page, html, List.of("<dt>motor</dt><dd>([^,<]+),", "· motor ([^<]+)<"));
        put("turns limit", page, html, "<dt>turns limit</dt><dd>([^<]+)<");
        put("torque limit", page, html, "<dt>torque limit</dt><dd>([^<]+)<");
        put("launch torque", page, html, "<dt>launch torque wanted</dt><dd>([^<]+)<");
        put("full stretch", page, html, "<dt>at full stretch</dt><dd>(\\d+) crank turns");
        put("hold", page, html, List.of("class=\"huge calm\" data-since=\"(\\d+)\"", "held <b data-since=\"(\\d+)\""));
    }

    private void put(String figure, String page, String html, List<String> patterns) {
        patterns.forEach(pattern -> put(figure, page, html, pattern));
    }

    /** What the first place says where the pattern fits; nothing where it fits nowhere. */
    void put(String figure, String page, String html, String pattern) {
        Matcher value = Pattern.compile(pattern).matcher(html);
        if (value.find()) {
            found.computeIfAbsent(figure, f -> new LinkedHashMap<>())
                    .put(page, value.group(1).strip());
        }
    }

    /** The same without what one page says. */
    LiveFigures without(String page) {
        found.values().forEach(byPage -> byPage.remove(page));
        return this;
    }

    /** Of one page; empty where it does not say it. */
    String said(String figure, String page) {
        return found.getOrDefault(figure, Map.of()).getOrDefault(page, "");
    }

    /** Figures of which two pages say different things. */
    Map<String, Map<String, String>> different() {
        Map<String, Map<String, String>> different = new TreeMap<>();
        found.forEach((figure, byPage) -> {
            if (byPage.values().stream().distinct().count() > 1) {
                different.put(figure, byPage);
            }
        });
        return different;
    }

    /** As many pages as say something of this figure. */
    int pagesWith(String figure) {
        return found.getOrDefault(figure, Map.of()).size();
    }

    Map<String, Map<String, String>> all() {
        return found;
    }

    @Override
    public String toString() {
        return found.toString();
    }
}
