package org.skeinday.attempt.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jooq.ExecuteContext;
import org.jooq.ExecuteListener;
import org.jooq.impl.DefaultExecuteListenerProvider;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.attempt.AttemptCalled;
import org.skeinday.attempt.AttemptGivenUp;
import org.skeinday.attempt.AttemptMoved;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LastAct;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.MotorParted;
import org.skeinday.attempt.MotorTaken;
import org.skeinday.attempt.PeopleSafe;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.ContestFacts;
import org.skeinday.motor.BreakPlace;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorFacts;
import org.skeinday.motor.store.MotorLifeFacts;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Json;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.store.WindFacts;

/** Facts of attempts into tables, and attempts out again as every page shows them. */
class LiveAttemptsStoreTest {
    private static final MotorAdded A3 =
            new MotorAdded("A3", "A3", "b", "Reedbank Rotors", "cw", 450, "450 mm", 1.5, "1.5 g", null, 0);

    @TempDir
    Path folder;

    private Database database;
    private Tx tx;
    private final List<FactKind> kinds = new ArrayList<>();

    @BeforeEach
    void open() {
        database = Database.open(folder, "live");
        tx = database.writing().tx();
        kinds.addAll(ContestFacts.kinds());
        kinds.addAll(MotorFacts.kinds());
        kinds.addAll(MotorLifeFacts.kinds());
        kinds.addAll(WindFacts.kinds());
        kinds.addAll(AttemptFacts.kinds());
        take(
                "event.added",
                new EventAdded(
                        "e",
                        "Saltmarsh Rotor Day",
                        "hosting",
                        "2026-05-09",
                        null,
                        null,
                        null,
                        3,
                        20,
                        "best",
                        1,
                        2,
                        "mean",
                        "mean",
                        10,
                        "nearest",
                        false,
                        0,
                        10,
                        null,
                        null));
        take("motor.added", A3);
        call("a1", "t1", 1);
    }

    @AfterEach
    void close() {
        database.close();
    }

    private void take(String kind, Object fact) {
        kinds.stream()
                .filter(k -> k.kind().equals(kind))
                .findFirst()
                .orElseThrow()
                .apply()
                .apply(tx, 1, Json.MAPPER.valueToTree(fact));
    }

    private void call(String id, String entry, int number) {
        take("attempt.called", new AttemptCalled(id, "e", entry, number, null, "A3", 1_000));
    }

    private void move(String id, String to, long atMs) {
        take("attempt.moved", new AttemptMoved(id, to, atMs));
    }

    private AttemptPhase phase(String id) {
        return LiveAttempts.find(tx, id).orElseThrow().phase();
    }

    private void wind(String id, String attempt, long atMs) {
        take(
                "wind.begun",
                new WindBegun(
                        id, attempt, "A3", null, null, 10, null, null, 200, 120, 4, null, "count", 1, "reader", null,
                        atMs, false));
    }

    private void tap(String wind, String phase, long atMs) {
        take("wind.phase", new WindPhase(wind + phase, wind, phase, atMs - 2_000, atMs));
    }

    private MotorStep step(MotorDeed deed, @Nullable MotorStep before, long atMs) {
        MotorStep step = new MotorLife(A3, before, false, 0)
                .step(deed, new MotorStep.By("s" + atMs, atMs, "", "laptop"), null, MotorStep.Told.NOTHING);
        take("motor.step", step);
        return step;
    }

    @Test
    void the_hold_is_read_from_the_readers_last_turn() {
        wind("w", "a1", 2_000);
        move("a1", "winding", 2_000);
        tap("w", "stopped", 5_000);
        move("a1", "holding", 5_100);
        tap("w", "backed-off", 6_000);
        assertEquals(new AttemptPhase.Holding(5_000, 1), phase("a1"));
    }

    @Test
    void a_break_stands_with_what_was_told_of_it_and_the_motor_keeps_where() {
        wind("w", "a1", 2_000);
        move("a1", "winding", 2_000);
        MotorStep broke = step(MotorDeed.BREAK, null, 3_000);
        assertEquals(new AttemptPhase.Broke(3_000, "A3", false, null, false), phase("a1"));
        take("attempt.people-safe", new PeopleSafe("a1", "A3", 4_000, null, "phone"));
        take("attempt.parted", new MotorParted("a1", "A3", "knot", 4_500, null, "phone"));
        take("motor.step.told", broke.partedAt(BreakPlace.KNOT));
        assertEquals(new AttemptPhase.Broke(3_000, "A3", true, BreakPlace.KNOT, false), phase("a1"));
        take("attempt.parted", new MotorParted("a1", "A3", "hook", 4_600, null, "phone"));
        assertEquals(new AttemptPhase.Broke(3_000, "A3", true, BreakPlace.HOOK, false), phase("a1"));
        take("attempt.motor", new MotorTaken("a1", "B2", 5_000));
        assertEquals(new AttemptPhase.Called(1_000, 2), phase("a1"));
    }

    @Test
    void a_motor_that_was_run_back_counts_as_a_use_only_where_so_many_turns_were_on() {
        wind("w", "a1", 2_000);
        move("a1", "winding", 2_000);
        assertEquals(1, uses());
        back("b1", "a1", "w", false, "called");
        assertEquals(new AttemptPhase.Called(1_000, 2), phase("a1"));
        assertEquals(0, uses());
        move("a1", "winding", 4_000);
        assertEquals(new AttemptPhase.Winding(4_000, 2), phase("a1"));
        back("b2", "a1", null, true, "called");
        assertEquals(1, uses());
        wind("w3", "a1", 6_000);
        move("a1", "winding", 6_000);
        assertEquals(2, uses(), "wound twice in one attempt");
    }

    /** Of A3, of which no breaking turns are known: any turn may have used it. */
    private int uses() {
        return MotorUseStore.all(tx).of("A3");
    }

    private void back(String id, String attempt, @Nullable String wind, boolean use, String state) {
        take("attempt.run-back", new TurnsRunBack(id, attempt, "A3", wind, 40, use, state, 3_500, null, "laptop"));
    }

    @Test
    void given_up_while_wound_it_waits_for_the_turns_and_is_abandoned_then() {
        move("a1", "winding", 2_000);
        take("attempt.given-up", new AttemptGivenUp("a1", "scrubbed", 3_000, "late", null, true));
        assertEquals(new AttemptPhase.RunBack(3_000, "A3"), phase("a1"));
        back("b1", "a1", null, false, "scrubbed");
        assertEquals(new AttemptPhase.Abandoned(3_000, "late"), phase("a1"));
        assertEquals(0, uses());
    }

    @Test
    void a_record_of_before_says_nothing_of_turns_and_is_abandoned() {
        move("a1", "winding", 2_000);
        take(
                "attempt.given-up",
                Json.MAPPER
                        .createObjectNode()
                        .put("attemptId", "a1")
                        .put("state", "scrubbed")
                        .put("atMs", 3_000)
                        .put("reason", "late"));
        assertEquals(new AttemptPhase.Abandoned(3_000, "late"), phase("a1"));
    }

    @Test
    void who_moved_it_last_is_kept() {
        take("attempt.acted", new LastAct("a1", "Wound", 2_000, "ines", "phone"));
        take("attempt.acted", new LastAct("a1", "Released", 3_000, null, "laptop"));
        assertEquals("Released", BreakRecord.lastAct(tx, "a1").orElseThrow().said());
    }

    @Test
    void all_attempts_of_an_event_are_read_as_one_by_one_and_with_as_many_queries() {
        for (int i = 2; i <= 20; i++) {
            call("a" + i, "t" + i, 1);
            wind("w" + i, "a" + i, 2_000 + i);
            move("a" + i, i % 2 == 0 ? "winding" : "released", 2_000 + i);
        }
        List<String> asked = new ArrayList<>();
        List<LiveAttempt> all = LiveAttempts.evidenceOfEvent(counting(asked), "e").stream()
                .map(LiveAttempt::of)
                .toList();
        List<LiveAttempt> single = all.stream()
                .map(a -> LiveAttempts.find(tx, a.id()).orElseThrow())
                .collect(Collectors.toList());
        assertEquals(single, all);
        assertEquals(20, all.size());
        assertTrue(asked.size() <= 14, asked.size() + " queries: " + asked);
    }

    private Tx counting(List<String> asked) {
        var listener = new ExecuteListener() {
            @Override
            public void executeStart(ExecuteContext context) {
                asked.add(String.valueOf(context.sql()));
            }
        };
        return new Tx(
                org.jooq.impl.DSL.using(tx.sql().configuration().derive(new DefaultExecuteListenerProvider(listener))));
    }
}
