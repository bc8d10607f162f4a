package org.skeinday.bench.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.jooq.ExecuteListener;
import org.jooq.impl.DSL;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.attempt.store.CleanWinds;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.store.RecordedSeason;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.WindJudged;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.store.WindStore;
import org.skeinday.winding.store.WindWorth;

/** What may be asked of winds is found without reading all that was read of all of them, and nothing is missed. */
class WindsToAskStoreTest {
    @TempDir
    Path folder;

    private Database database;
    private Tx tx;
    private RecordedSeason season;

    @BeforeEach
    void open() {
        database = Database.open(folder, "winds");
        tx = database.writing().tx();
        season = new RecordedSeason(tx, 7);
    }

    @AfterEach
    void close() {
        database.close();
    }

    private static List<WindQuestion> asked(Tx tx) {
        return new WindQuestions(tx, ZoneOffset.UTC).open(Set.of());
    }

    /** How many rows of any table the questions take. */
    private int rows() {
        AtomicInteger rows = new AtomicInteger();
        var counted = tx.sql().configuration().derive(ExecuteListener.onRecordEnd(c -> rows.incrementAndGet()));
        asked(new Tx(DSL.using(counted)));
        return rows.get();
    }

    @Test
    void many_winds_of_which_nothing_is_asked_take_no_rows_and_a_few_that_are_asked_about_take_theirs_alone() {
        season.fill(20, 0);
        int few = rows();
        assertEquals(List.of(), asked(tx));
        assertTrue(few < 100, few + " rows: motors, batches and places");
        IntStream.range(20, 220).forEach(i -> copy(i, 24));
        assertEquals(few, rows(), "two hundred winds more");
        copy(220, 45);
        assertEquals(1, asked(tx).size(), "beyond the meter: " + asked(tx));
        assertTrue(rows() < few + 80, rows() + " rows: its own marks and steps");
    }

    @Test
    void a_wind_whose_marks_are_asked_about_since_they_were_above_the_band_is_no_clean_one() {
        season.fill(1, 0);
        Map<String, Integer> before = CleanWinds.byPerson(tx);
        copy(1, 24);
        int clean = CleanWinds.byPerson(tx).getOrDefault("tomek", 0);
        assertEquals(before.getOrDefault("tomek", 0) + 1, clean);
        said("w1", Measured.PEAK_TORQUE, peak("w1"), Source.TAP, false, true);
        assertEquals(before, CleanWinds.byPerson(tx));
        said("w1", Measured.PEAK_TORQUE, peak("w1"), Source.TAP, true, null);
        assertEquals(clean, CleanWinds.byPerson(tx).get("tomek"), "once somebody said that it was so");
    }

    private double peak(String wind) {
        return WindStore.find(tx, wind).flatMap(Wind::peakTorque).orElseThrow().newtonMillimetres();
    }

    /** A wind as the season has them, of so many marks up. */
    private void copy(int i, int marks) {
        begun("w" + i, i % 60);
        for (int k = 1; k <= marks; k++) {
            mark("w" + i, k, 1, 4_000L * k, null);
        }
        phase("w" + i, WindPhase.STOPPED, 4_000L * marks + 500);
        phase("w" + i, WindPhase.OFF_METER, 4_000L * marks + 60_000);
        season.take("wind.counted", new WindCounted("w" + i, 126, 210, 4.0, false));
    }

    private void begun(String id, int motor) {
        season.take(
                "wind.begun",
                new WindBegun(
                        id,
                        null,
                        "motor" + motor,
                        null,
                        "wire 1",
                        10,
                        0.2,
                        7.0,
                        210,
                        126,
                        4,
                        null,
                        "count",
                        1,
                        "d",
                        "tomek",
                        1_790_000_000_000L + motor,
                        false));
    }

    private void mark(String wind, int k, int step, long at, Integer setTo) {
        season.take("wind.mark", new WindMark(wind + "m" + k, wind, setTo == null ? step : 0, at, at, false, setTo));
    }

    private void phase(String wind, String phase, long at) {
        season.take("wind.phase", new WindPhase(wind + phase + at, wind, phase, at, at));
    }

    private void random(int i, SplittableRandom random) {
        String id = "r" + i;
        begun(id, random.nextInt(60));
        int marks = 1 + random.nextInt(40);
        long at = 0;
        for (int k = 1; k <= marks; k++) {
            at += random.nextInt(12) == 0 ? random.nextInt(300) : 1_500 + random.nextInt(3_000);
            int step = random.nextInt(25) == 0 ? -1 : 1;
            mark(id, k, step, at, random.nextInt(60) == 0 ? (Integer) random.nextInt(40) : null);
        }
        for (String phase : WindPhase.PHASES) {
            if (random.nextInt(phase.equals(WindPhase.BROKE) ? 6 : 2) == 0) {
                phase(id, phase, at * random.nextInt(130) / 100 + random.nextInt(900));
            }
        }
        if (random.nextInt(4) == 0) {
            String held = random.nextInt(90) / 10.0 + 0.1 + " mN-m at 0:40";
            season.take("wind.held", new WindHeld(id, HeldRead.parse(held, "mN-m", 0.2)));
        }
        int stop = random.nextInt(12) == 0 ? 900 : 150 + random.nextInt(80);
        season.take("wind.counted", new WindCounted(id, 126, stop, 4.0, random.nextInt(9) == 0));
        if (random.nextInt(6) == 0) {
            said(id, Measured.CRANK_TURNS, stop, Source.OFFERED, random.nextBoolean(), null);
        }
        if (random.nextInt(9) == 0) {
            WindStore.find(tx, id)
                    .flatMap(Wind::peakTorque)
                    .ifPresent(
                            peak -> said(id, Measured.PEAK_TORQUE, peak.newtonMillimetres(), Source.TAP, false, true));
        }
        if (random.nextInt(8) == 0) {
            season.take("wind.judged", new WindJudged(id, random.nextBoolean() ? "slipped" : null, null, 0));
        }
    }

    private void said(String of, Measured what, double number, Source source, boolean confirmed, Boolean asked) {
        season.take(
                "flight.marked", new ValueMarked(of, what.word(), number, source.word(), confirmed, null, null, asked));
    }

    @ParameterizedTest
    @MethodSource("org.skeinday.Seeds#several")
    void nothing_that_is_asked_about_any_wind_is_missed(long seed) {
        season.fill(5, 0);
        var random = new SplittableRandom(seed);
        IntStream.range(0, 150).forEach(i -> random(i, random));
        var worth = new WindWorth(tx);
        List<String> asked = BatchStore.all(tx).stream()
                .flatMap(batch -> WindStore.countedOfBatch(tx, batch.id()).stream())
                .filter(wind -> worth.leftOut(wind).isEmpty())
                .filter(wind -> worth.count(wind).isPresent()
                        || !worth.offered(wind).isEmpty()
                        || !worth.askedReadings(wind).isEmpty())
                .map(wind -> wind.begun().id())
                .sorted()
                .toList();
        assertTrue(asked.size() > 20 && asked.size() < 150, asked.size() + " of 150");
        assertEquals(asked, asked(tx).stream().map(WindQuestion::wind).sorted().toList(), "seed " + seed);
        List<String> learned = BatchStore.all(tx).stream()
                .flatMap(batch -> WindStore.evidenceOfBatch(tx, batch.id()).stream())
                .map(wind -> wind.begun().id())
                .toList();
        assertTrue(learned.stream().noneMatch(asked::contains), "what waits for a word is in no fit, seed " + seed);
        assertTrue(learned.size() > 5, "and some are");
    }
}
