package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.attempt.store.CleanWinds;
import org.skeinday.bench.web.WindQuestion;
import org.skeinday.bench.web.WindQuestions;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.HeldWind;
import org.skeinday.review.store.BatchWindsStore;
import org.skeinday.review.store.RecordedSeason;
import org.skeinday.winding.store.HeldStore;
import org.skeinday.winding.store.WindStore;
import org.skeinday.winding.store.WindWorth;

/** A hold that comes with files bleeds as it did where it was read. */
class HoldsOfFilesTest {
    private static final String HEADER =
            "entry,attempt,state,motor,landed,stop count,wound at,meter,division,full scale,"
                    + "winder ratio,held,held to,hold left out\n";
    private static final String READ = "0.78 in-ozf at 0:10; 0.76 in-ozf at 0:40; 0.75 in-ozf at 1:30";

    @TempDir
    Path root;

    private Database database;
    private Tx tx;

    private static String row(String state, String held, String out) {
        return "Teal,1," + state + ",R-01,2026-05-09 10:20,210,Table,dial 1,0.02 in-ozf,1.4 in-ozf,10,\"" + held
                + "\",0.002 in-ozf," + out + "\n";
    }

    @BeforeEach
    void open() {
        database = Database.open(root, "holds");
        tx = database.writing().tx();
    }

    @AfterEach
    void close() {
        database.close();
    }

    private void taken(String row) {
        Map<String, String> texts = new HashMap<>(Reading.RIGHT);
        texts.remove("crew.csv");
        texts.put("attempts.csv", HEADER + row);
        DayFiles.Read read = Reading.of(texts);
        Reading.right(read);
        var record = new RecordedSeason(tx, 3);
        read.facts().forEach(fact -> record.take(fact.kind(), fact.body()));
    }

    private List<HeldWind> holds() {
        return BatchStore.all(tx).stream()
                .flatMap(batch -> new BatchWindsStore(tx).of(batch.id()).orElseThrow().holds().stream())
                .toList();
    }

    private List<WindQuestion> asked() {
        return new WindQuestions(tx, ZoneOffset.UTC).open(Set.of());
    }

    @Test
    void a_hold_has_its_wind_in_the_files_batch_and_meter_with_it() {
        taken(row("landed", READ, ""));
        assertEquals(1, holds().size());
        assertTrue(holds().get(0).hold().bleed() > 0, "it fell");
        assertEquals(Map.of(), CleanWinds.byPerson(tx), "no clearance is earned by a file");
    }

    @ParameterizedTest
    @ValueSource(strings = {"to a metronome", "the winder slipped"})
    void a_hold_that_entered_no_fit_where_it_was_read_enters_none_here(String why) {
        taken(row("landed", READ, why));
        assertEquals(List.of(), holds());
    }

    @Test
    void a_reading_off_the_scale_is_asked_about_and_stays_out() {
        taken(row("landed", READ.replace("0.78", "7.8"), ""));
        assertEquals(1, asked().size());
        assertEquals(List.of(), holds());
    }

    @Test
    void a_reading_off_the_scale_that_somebody_confirmed_is_not_asked_about_again_and_goes_out_so() {
        taken(row("landed", READ.replace("0.78 in-ozf at 0:10", "1.5 in-ozf at 0:10 confirmed"), ""));
        assertEquals(List.of(), asked());
        assertEquals(1, HeldStore.byAttempt(tx, new WindWorth(tx)).confirmed().size());
    }

    @Test
    void an_attempt_that_is_not_over_has_no_wind_that_could_be_gone_on_with() {
        taken(row("called", READ, ""));
        assertEquals(List.of(), holds());
        assertEquals(List.of(), WindStore.begun(tx));
    }
}
