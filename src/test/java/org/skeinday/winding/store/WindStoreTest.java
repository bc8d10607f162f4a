package org.skeinday.winding.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorFacts;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Json;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPhase;

/** A wind into tables and out again. */
class WindStoreTest {
    private static final WindBegun BEGUN = new WindBegun(
            "w", "a", "m", "s", "wire 1", 10, 0.353, 7.06, 206, 124, 2, 4.2, "count", 1, "d", null, 1_000, false);

    @TempDir
    Path folder;

    private Database database;
    private Tx tx;

    @BeforeEach
    void open() {
        database = Database.open(folder, "winds");
        tx = database.writing().tx();
    }

    @AfterEach
    void close() {
        database.close();
    }

    private void take(String kind, Object fact) {
        List<FactKind> kinds = new ArrayList<>(WindFacts.kinds());
        kinds.addAll(MotorFacts.kinds());
        kinds.stream()
                .filter(k -> k.kind().equals(kind))
                .findFirst()
                .orElseThrow()
                .apply()
                .apply(tx, 1, Json.MAPPER.valueToTree(fact));
    }

    private static List<WindMark> marks() {
        List<WindMark> marks = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            marks.add(new WindMark(
                    "k" + i, "w", i == 11 ? -1 : 1, 3_000L + 4_000L * i, 4_000L + 4_000L * i, false, null));
        }
        return marks;
    }

    @Test
    void a_wind_is_read_back_as_it_was_tapped_whatever_the_order_in_which_it_came() {
        long seed = 20_261_125L;
        System.out.println("seed " + seed);
        List<WindMark> mixed = new ArrayList<>(marks());
        java.util.Collections.shuffle(mixed, new java.util.Random(new SplittableRandom(seed).nextLong()));
        var stopped = new WindPhase("p2", "w", WindPhase.STOPPED, 45_000, 46_000);
        var in = new WindPhase("p1", "w", WindPhase.STEPPING_IN, 30_000, 31_000);
        take("wind.begun", BEGUN);
        take("wind.phase", stopped);
        mixed.forEach(m -> take("wind.mark", m));
        take("wind.phase", in);
        take("wind.counted", new WindCounted("w", 124, 206, 2.0, false));
        Wind expected = Wind.of(BEGUN, List.of(in, stopped), marks(), new WindCounted("w", 124, 206, 2.0, false));
        assertEquals(expected, WindStore.find(tx, "w").orElseThrow());
        assertEquals(List.of(expected), WindStore.ofMotor(tx, "m"));
        assertTrue(WindStore.alone(tx, "m").isEmpty(), "it belongs to an attempt");
    }

    @Test
    void a_mark_left_out_after_it_was_asked_about_stays_in_the_record_and_counts_no_more() {
        take("wind.begun", BEGUN);
        marks().forEach(m -> take("wind.mark", m));
        int before = WindStore.find(tx, "w").orElseThrow().level(60_000);
        WindMark asked = WindStore.mark(tx, "k3").orElseThrow();
        take("wind.mark", new WindMark(asked.id(), "w", asked.step(), asked.elapsedMs(), asked.atMs(), true, null));
        Wind after = WindStore.find(tx, "w").orElseThrow();
        assertEquals(before - 1, after.level(60_000));
        assertEquals(12, after.marks().size());
    }

    @Test
    void only_counted_winds_are_evidence_of_their_batch() {
        take("batch.added", new BatchAdded("b", "B", null, null, null, null, 43.0, null));
        take("motor.added", new MotorAdded("m", "A3", "b", "Reed", "cw", 450, "450 mm", 1.5, "1.5 g", null, 0));
        take("wind.begun", BEGUN);
        assertEquals(List.of(), WindStore.countedOfBatch(tx, "b"));
        take("wind.counted", new WindCounted("w", 124, 206, null, false));
        assertEquals(1, WindStore.countedOfBatch(tx, "b").size());
        assertEquals(List.of(), WindStore.countedOfBatch(tx, "other"));
    }
}
