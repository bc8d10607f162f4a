package org.skeinday.attempt.web;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What pages say of the attempt that an entry calls next, and of its spare: figures beside those of the one under way. */
final class NextFigures {
    private static final String DAY = "<dt>%s</dt><dd>(motor [^<]+)</dd>";

    private final LiveFigures figures;
    private final ReadOnce pages;
    private final String entry;

    private NextFigures(LiveFigures figures, ReadOnce pages, String entry) {
        this.figures = figures;
        this.pages = pages;
        this.entry = entry;
    }

    /** @param title of the attempt that the figures are of: the next one comes after it */
    static void add(LiveFigures figures, ReadOnce pages, String entryId, String title) throws Exception {
        var next = new NextFigures(figures, pages, title.replaceFirst(",.*", ""));
        next.onCards();
        next.onBench();
        next.onNow();
        next.onChoice(entryId);
        next.assigned(entryId, title);
    }

    private void onCards() throws Exception {
        List<String> cards = Pattern.compile("(?s)<section class=\"paper-card\">\\s*<h1>" + entry + ", .*?</section>")
                .matcher(pages.at("/cards"))
                .results()
                .map(found -> found.group())
                .toList();
        figures.put("flights to come", "cards", String.valueOf(cards.size()), "(.+)");
        if (cards.isEmpty()) {
            return;
        }
        String first = cards.get(0);
        figures.put("next number", "cards", first, "<h1>" + entry + ", ([^<]+?) <");
        figures.put("next motor", "cards", first, "<dt>Motor</dt><dd>(\\w+), use");
        figures.put("next spare", "cards", first, "<dt>Spare</dt><dd>(\\w+), use");
        pair(first, "next winds and reads", "Winds", "Reads");
        pair(first, "next loads and releases", "Loads", "Releases");
        figures.put("next start", "cards", first, "<dt>Start</dt><dd>([^<]+)<");
    }

    private void pair(String card, String figure, String one, String other) {
        Matcher both = Pattern.compile(
                        "<dt>" + one + "</dt><dd>([^<]+)</dd></div><div><dt>" + other + "</dt><dd>([^<]+)<")
                .matcher(card);
        if (both.find()) {
            figures.put(figure, "cards", both.group(1) + " / " + both.group(2), "(.+)");
        }
    }

    private void onBench() throws Exception {
        Matcher row = Pattern.compile("<p class=\"motor-tag\"><a [^>]*>([^<]+)</a></p>\\s*<p class=\"motor-state\">.*?"
                        + "<span class=\"motor-need\">(for|spare for) " + entry + ", ([^<:]+)<")
                .matcher(pages.at("/bench/part"));
        while (row.find()) {
            figures.put(row.group(2).equals("for") ? "next motor" : "next spare", "bench", row.group(1), "(.+)");
            figures.put("next number", "bench", row.group(3), "(.+)");
        }
    }

    /** Where nothing is under way it shows the next one. */
    private void onNow() throws Exception {
        String html = pages.at("/now");
        if (html.contains("<h1>" + entry + ", ") && html.contains(" <span class=\"state \">next</span></h1>")) {
            figures.put("next number", "now", html, "<h1>" + entry + ", ([^<]+?) <span");
            figures.put("next motor", "now", html, "<dt>motor</dt><dd>(\\w+),");
            figures.put("next spare", "now", html, "<dt>spare</dt><dd>(\\w+)<");
            figures.put("next winds and reads", "now", html, "<dt>winds / reads</dt><dd>([^<]+)<");
            figures.put("next loads and releases", "now", html, "<dt>loads / releases</dt><dd>([^<]+)<");
            figures.put("next start", "now", html, "<dt>start at</dt><dd>([^<]+?) hook to hook<");
        }
        figures.put(
                "next number", "wall", pages.at("/results/wall/part"), "next · ([^<]+)</p>\\s*<h1>" + entry + "</h1>");
    }

    private void onChoice(String entryId) throws Exception {
        String html = pages.at("/choice/" + entryId);
        figures.put("flights to come", "choice", html, "(\\d+) attempts? ahead");
        if (html.contains("No attempt is left to call")) {
            figures.put("flights to come", "choice", "0", "(.+)");
        }
    }

    /** Day says it of the one that is under way, else of the next; the choice says the same without its name. */
    private void assigned(String entryId, String title) throws Exception {
        String day = pages.at("/day/part");
        boolean isUnderWay = Pattern.compile(String.format(DAY, Pattern.quote(title)))
                .matcher(day)
                .find();
        String of = isUnderWay ? Pattern.quote(title) : entry + ", [^<]+";
        Matcher assigned = Pattern.compile(String.format(DAY, of)).matcher(day);
        if (!assigned.find()) {
            return;
        }
        String choice = pages.at("/choice/" + entryId);
        figures.put("assigned", "day", assigned.group(1), "(.+)");
        figures.put("assigned", "choice", choice, "Assigned as on every page: ([^<]+)\\.<");
        figures.put(isUnderWay ? "motor" : "next motor", "day", assigned.group(1), "motor (\\w+)");
        figures.put(isUnderWay ? "next motor" : "next spare", "day", assigned.group(1), "spare (\\w+)");
    }
}
