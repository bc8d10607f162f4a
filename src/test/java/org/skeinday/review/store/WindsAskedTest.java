package org.skeinday.review.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.bench.web.WindQuestion;
import org.skeinday.bench.web.WindQuestions;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.store.WindStore;

/** Winds of a season of which something is asked. */
class WindsAskedTest {
    @TempDir
    Path folder;

    private Database database;
    private Tx tx;
    private RecordedSeason season;

    @BeforeEach
    void open() {
        database = Database.open(folder, "asked");
        tx = database.writing().tx();
        season = new RecordedSeason(tx, 17);
        season.fill(130, 0);
    }

    @AfterEach
    void close() {
        database.close();
    }

    private List<String> asked() {
        return new WindQuestions(tx, ZoneOffset.UTC)
                .open(Set.of()).stream().map(WindQuestion::wind).toList();
    }

    private int fits(String wind) {
        return (int) WindStore.evidenceOfBatch(tx, "batch0").stream()
                .filter(w -> w.begun().id().equals(wind))
                .count();
    }

    private void marked(String wind, Measured what, double number, Source source, boolean asked) {
        season.take(
                "flight.marked",
                new ValueMarked(wind, what.word(), number, source.word(), false, null, null, asked ? true : null));
    }

    @Test
    void every_open_wind_is_asked_about_however_long_ago_it_was_the_oldest_first() {
        assertEquals(List.of(), asked());
        for (String wind : List.of("wind129", "wind0", "wind50")) {
            long at = WindStore.find(tx, wind).orElseThrow().begun().atMs();
            season.take("wind.mark", new WindMark(wind + "slip", wind, 1, 500, at + 500, false, null));
            season.take("wind.mark", new WindMark(wind + "again", wind, 1, 540, at + 540, false, null));
        }
        assertEquals(List.of("wind0", "wind50", "wind129"), asked());
    }

    @Test
    void a_wind_above_the_band_and_one_between_turns_that_were_only_offered_enter_no_fit() {
        assertEquals(1, fits("wind0"));
        double peak = WindStore.find(tx, "wind0")
                .orElseThrow()
                .peakTorque()
                .orElseThrow()
                .newtonMillimetres();
        marked("wind0", Measured.PEAK_TORQUE, peak, Source.TAP, true);
        assertEquals(0, fits("wind0"), "asked about");
        marked("wind0", Measured.PEAK_TORQUE, peak + 1, Source.TAP, true);
        assertEquals(1, fits("wind0"), "of another torque than the wind has by now");
        marked("wind0", Measured.AT_FULL, 126, Source.OFFERED, false);
        assertEquals(0, fits("wind0"), "the turns between which it was read were nobody's");
        assertTrue(asked().contains("wind0"));
    }
}
