package org.skeinday.cli;

import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Visitor;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.http.Pace;
import org.skeinday.review.store.RecordedSeason;

/**
 * The pages that read a season, asked of a running program with 2,000 flights and 300 motors, beside a bare read of as many
 * flights and motors. Prints figures, ratios and what each page weighs; asserts none.
 */
class SeasonPagesBenchmark {
    private static final int FLIGHTS = 2_000;
    private static final int MOTORS = 300;
    private static final int RUNS = 40;
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");
    private static final List<String> PAGES = List.of(
            "/evening",
            "/prepare/flights",
            "/prepare/flights?page=39",
            "/prepare/motors",
            "/practice",
            "/prepare",
            "/prepare/flights/new");

    private static final Pattern OFFERED = Pattern.compile("<option value=\"(season:[^\"]+)\"");

    @TempDir
    Path folder;

    @Test
    void a_season_of_two_thousand_flights_and_three_hundred_motors() throws Exception {
        double bare = bare();
        Map<String, String> files = new TreeMap<>(DayFolder.read(Path.of("demo-data")));
        files.merge("motors.csv", motors(), String::concat);
        files.merge("flights.csv", flights(), String::concat);
        var taken = Exchange.take(folder.resolve("season"), files, 0, Clock.systemDefaultZone(), new SecureRandom());
        if (!taken.errors().isEmpty()) {
            throw new AssertionError(taken.errors().get(0).text());
        }
        var settings = new App.Settings(folder.resolve("season"), 0, false, Pace.normal());
        try (App app = App.start(settings, Clock.systemDefaultZone(), new SecureRandom())) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            List<String> pages = new ArrayList<>(PAGES);
            pages.addAll(seasons(laptop));
            for (String page : pages) {
                print(page, bare, () -> asked(laptop, page));
            }
        }
    }

    /** As the page offers them: which there are depends on the day of the run. */
    private static List<String> seasons(Visitor laptop) throws Exception {
        List<String> found = OFFERED.matcher(laptop.get("/evening").body())
                .results()
                .map(offer -> "/evening?look=" + URLEncoder.encode(offer.group(1), StandardCharsets.UTF_8))
                .toList();
        if (found.isEmpty()) {
            throw new AssertionError("Evening offers no season");
        }
        return found;
    }

    private static int asked(Visitor laptop, String page) throws Exception {
        HttpResponse<String> answer = laptop.get(page);
        if (answer.statusCode() != 200) {
            throw new AssertionError(page + " " + answer.statusCode());
        }
        return answer.body().length();
    }

    private static String motors() {
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < MOTORS; i++) {
            lines.append('S').append(i).append(",A,Reedbank Rotors,cw,18.75,1.69,,0,\n");
        }
        return lines.toString();
    }

    private static String flights() {
        StringBuilder lines = new StringBuilder();
        LocalDateTime at = LocalDateTime.now().minusDays(300).withHour(18).withMinute(0);
        for (int i = 0; i < FLIGHTS; i++) {
            String when = MINUTE.format(at.plusDays(i / 10).plusMinutes(i % 10 * 12));
            lines.append("Saltmarsh Practice Evening,Reed One,S%d,%s,%d,10,0.%d,0.34,2,1:%02d.%d1,59,,yes,\n"
                    .formatted(i % MOTORS, when, 200 + i % 40, 30 + i % 20, i % 60, i % 10));
        }
        return lines.toString();
    }

    /** As many rows of the same tables, read and nothing more. */
    private double bare() throws Exception {
        Database database = Database.open(folder, "bare");
        try {
            var writing = database.writing();
            new RecordedSeason(writing.tx(), 20_261_126).fill(0, FLIGHTS);
            writing.commit();
            return print(
                    "bare read of the flights",
                    0,
                    () -> database.read(tx ->
                            tx.sql().fetch("select * from practice_flight").size()));
        } finally {
            database.close();
        }
    }

    private static double print(String what, double bare, Callable<Integer> run) throws Exception {
        double[] ms = new double[RUNS];
        int size = 0;
        for (int i = 0; i < RUNS; i++) {
            long start = System.nanoTime();
            size = run.call();
            ms[i] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(ms);
        double median = ms[RUNS / 2];
        System.out.printf(
                Locale.ROOT,
                "%-32s p50 %6.0f ms, p95 %6.0f ms, %8d%s%n",
                what,
                median,
                ms[RUNS * 95 / 100],
                size,
                bare == 0 ? " rows" : String.format(Locale.ROOT, " characters, ratio %.1f", median / bare));
        return median;
    }
}
