package org.skeinday.review.web;

import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.http.Frame;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.ScreenLight;
import org.skeinday.review.store.RecordedSeason;
import org.skeinday.units.UnitSystem;

/**
 * Evening with a season of 2,000 flights, 1,400 of them with winds that were read mark by mark: read, reviewed, drawn and
 * made into a page, beside a bare read of the same tables. Prints figures and ratios, asserts none.
 */
class EveningBenchmark {
    private static final List<String> TABLES = List.of(
            "attempt",
            "attempt_note",
            "attempt_reading",
            "practice_flight",
            "winding_wind",
            "winding_mark",
            "winding_phase",
            "winding_counted");
    private static final int RUNS = 9;

    @TempDir
    Path folder;

    private final TemplateEngine engine = Page.precompiled();

    @Test
    void a_season_of_two_thousand_flights() {
        Database database = Database.open(folder, "season");
        try {
            var writing = database.writing();
            new RecordedSeason(writing.tx(), 20_261_126).fill(1_400, 600);
            writing.commit();
            double bare = print("bare read of the same tables", 0, () -> bare(database));
            print("the last event, the first page", bare, () -> page(database, Map.of()));
            print("the whole season", bare, () -> page(database, Map.of("look", "season:2026/27")));
            print("its pictures", bare, () -> pictures(database));
        } finally {
            database.close();
        }
    }

    private static int bare(Database database) {
        return database.read(tx -> TABLES.stream()
                .mapToInt(t -> tx.sql().fetch("select * from " + t).size())
                .sum());
    }

    private EveningPresenter evening(org.skeinday.platform.db.Tx tx, Map<String, String> asked) {
        return new EveningPresenter(
                tx,
                ZoneOffset.UTC,
                Map.of("tomek", "Tomek"),
                UnitSystem.METRIC,
                new EveningQuery(new TreeMap<>(asked)),
                0,
                true);
    }

    private int page(Database database, Map<String, String> asked) {
        return rendered(
                "review/evening.jte", database.read(tx -> evening(tx, asked).view()));
    }

    private int pictures(Database database) {
        Map<String, String> asked = Map.of("look", "season:2026/27");
        return rendered(
                "review/pictures.jte", database.read(tx -> evening(tx, asked).pictures()));
    }

    private int rendered(String template, Object view) {
        var frame = new Frame(
                "Evening",
                "/evening",
                List.of(),
                "",
                "",
                "",
                "",
                "",
                out -> {},
                List.of(),
                true,
                false,
                ScreenLight.DEVICE);
        var output = new StringOutput(64 * 1024);
        engine.render(template, Map.of("frame", frame, "view", view), output);
        return output.toString().length();
    }

    private static double print(String what, double bare, Supplier<Integer> run) {
        double[] ms = new double[RUNS];
        int size = 0;
        for (int i = 0; i < RUNS; i++) {
            long start = System.nanoTime();
            size = run.get();
            ms[i] = (System.nanoTime() - start) / 1e6;
        }
        double first = ms[0];
        Arrays.sort(ms);
        double median = ms[RUNS / 2];
        System.out.printf(
                Locale.ROOT,
                "%-32s first %7.0f ms, median %7.0f ms, %9d%s%n",
                what,
                first,
                median,
                size,
                bare == 0 ? " rows" : String.format(Locale.ROOT, " characters, ratio %.1f", median / bare));
        return median;
    }
}
