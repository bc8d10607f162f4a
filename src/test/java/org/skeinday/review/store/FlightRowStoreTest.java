package org.skeinday.review.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.Part;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.BatchOfWinds;
import org.skeinday.review.ChangeNextTime;
import org.skeinday.review.FlightRow;
import org.skeinday.review.StepTime;
import org.skeinday.review.TorqueAtShare;
import org.skeinday.units.UnitSystem;

/** Facts of all rooms in, rows of the evening out. */
class FlightRowStoreTest {
    private static final Map<String, String> PEOPLE = Map.of("tomek", "Tomek");

    @TempDir
    Path folder;

    private Database database;
    private Tx tx;
    private RecordedSeason season;

    @BeforeEach
    void open() {
        database = Database.open(folder, "evening");
        tx = database.writing().tx();
        season = new RecordedSeason(tx, 7);
    }

    @AfterEach
    void close() {
        database.close();
    }

    private FlightRow row(String id) {
        return FlightRowStore.all(tx, ZoneOffset.UTC, PEOPLE).stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_row_has_everything_that_was_noted_of_an_attempt_and_its_wind() {
        season.fill(25, 3);
        FlightRow row = row("attempt21");
        assertEquals("2026-10-10", row.day().toString());
        assertEquals("Day 1", Objects.requireNonNull(row.flown().event()).name());
        assertEquals("Curlew", Objects.requireNonNull(row.flown().entry()).name());
        assertEquals("Reed Two", Objects.requireNonNull(row.flown().model()).name());
        assertEquals("motor21", Objects.requireNonNull(row.flown().motor()).name());
        assertEquals("Lot 2", Objects.requireNonNull(row.flown().batch()).name());
        assertEquals("Tomek", Objects.requireNonNull(row.flown().winder()).name());
        assertEquals("wire 1", row.wound().meter());
        assertEquals(2, row.wound().use(), "one before it was added");
        assertEquals(40.0, row.wound().holdSeconds());
        // K · L^1.5 / m^0.5 with L = 470 mm = 18.504 in and m = 1.6 g: 42.6 · 79.60 / 1.2649 = 2680.7 (calc)
        assertEquals(2100 / 2680.7, Objects.requireNonNull(row.wound().fraction()), 1e-3);
        assertEquals(2, row.watchesMs().size());
        assertTrue(row.flight().figures().isPresent());
    }

    @Test
    void practice_stands_among_attempts_in_the_order_in_which_they_were_flown_and_uses_are_counted_on() {
        season.fill(2, 62);
        List<FlightRow> rows = FlightRowStore.all(tx, ZoneOffset.UTC, PEOPLE);
        assertEquals(64, rows.size());
        for (int i = 1; i < rows.size(); i++) {
            assertTrue(rows.get(i - 1).flight().atMs() <= rows.get(i).flight().atMs());
        }
        assertFalse(row("practice0").counts());
        assertEquals("touched a beam", row("practice0").flight().counts().reason());
        assertEquals(2, row("practice5").wound().use(), "one before it was added");
        assertEquals(4, row("practice61").wound().use(), "and those of attempt1 and practice1");
        assertTrue(row("practice5").steps().isEmpty());
    }

    @Test
    void an_attempt_without_an_official_time_has_that_of_our_own_first_watch() {
        season.fill(2, 0);
        FlightRow none = row("attempt0");
        assertEquals(none.watchesMs().get(0), none.flight().timeMs());
    }

    @Test
    void durations_stay_as_planned_when_a_later_plan_no_longer_names_what_is_over() {
        season.fill(2, 0);
        long at = RecordedSeason.START;
        season.take(
                "plan.taken",
                plan(at, task("Curlew 1 wind", at + 60_000, 200), task("Curlew 2 wind", at + 900_000, 210)));
        season.take(
                "plan.taken",
                plan(at + 100_000, task("Curlew 1 wind", at + 60_000, 999), task("Curlew 2 wind", at + 950_000, 230)));
        season.take("plan.taken", plan(at + 600_000, task("Curlew 2 wind", at + 960_000, 220)));
        assertEquals(
                Optional.of(new StepTime(Part.WIND, 200L, 200L)),
                row("attempt0").step(Part.WIND),
                "what runs already was planned before");
        assertEquals(220L, row("attempt1").step(Part.WIND).orElseThrow().plannedSeconds());
        assertNull(row("attempt0").step(Part.LOAD).orElseThrow().plannedSeconds());
    }

    private static PlanTaken.Planned task(String name, long start, long seconds) {
        return new PlanTaken.Planned(name, start, start + 1000 * seconds, "", null);
    }

    private static PlanTaken plan(long at, PlanTaken.Planned... tasks) {
        return new PlanTaken("event0", at, null, List.of(tasks), List.of(), List.of(), true);
    }

    @Test
    void a_plan_is_for_the_try_that_it_was_made_for_and_one_of_before_counted_the_tries() {
        season.fill(1, 0);
        long at = RecordedSeason.START;
        PlanTaken.Planned[] second = {task("Curlew 2 wind", at + 9_000_000, 200)};
        season.take("plan.taken", plan(at, second));
        season.take("attempt.imported", attempt("given-up", 2, "scrubbed", at + 1_000_000));
        season.take("attempt.imported", attempt("again", 3, "closed", at + 9_000_000));
        assertNull(row("again").step(Part.WIND).orElseThrow().plannedSeconds(), "that was for the first try");
        season.take("attempt.imported", attempt("late", 4, "scrubbed", at + 9_500_000));
        PlanTaken.Planned[] tries = {
            task("Curlew 5 wind", at + 9_900_000, 230), task("Curlew 6 wind", at + 9_990_000, 240)
        };
        season.take(
                "plan.taken", new PlanTaken("event0", at, null, List.of(tries), List.of(), List.of("Curlew 7"), null));
        PlanTaken inForce = PlanStore.inForce(tx, "event0").orElseThrow();
        assertEquals(
                List.of("Curlew 3 wind", "Curlew 4 wind"),
                inForce.tasks().stream().map(PlanTaken.Planned::task).toList());
        assertEquals(List.of("Curlew 5"), inForce.givenUp());
        season.take("attempt.imported", attempt("third", 5, "closed", at + 9_900_000));
        season.take("attempt.imported", attempt("fourth", 6, "closed", at + 9_990_000));
        assertEquals(230L, row("third").step(Part.WIND).orElseThrow().plannedSeconds());
        assertEquals(240L, row("fourth").step(Part.WIND).orElseThrow().plannedSeconds());
        assertNull(row("again").step(Part.WIND).orElseThrow().plannedSeconds());
    }

    private static AttemptImported attempt(String id, int running, String state, long at) {
        boolean flown = state.equals("closed");
        return new AttemptImported(
                id,
                "event0",
                "entry0",
                running,
                "model0",
                "motor0",
                state,
                at,
                at + 60_000,
                flown ? (Long) (at + 260_000) : null,
                flown ? (Long) (at + 300_000) : null,
                flown ? (Long) (at + 360_000) : null,
                flown ? (Long) (at + 400_000) : null,
                null,
                null,
                null,
                flown ? 60_000L : null,
                flown ? null : "a rib broke",
                null);
    }

    @Test
    void a_judgement_makes_a_row_invalid_and_valid_again() {
        season.fill(1, 0);
        season.take("attempt.judged", new FlightJudged("attempt0", "touched a wall", 12_000L, false, null));
        assertFalse(row("attempt0").counts());
        season.take("attempt.judged", new FlightJudged("attempt0", null, null, false, null));
        assertTrue(row("attempt0").counts());
    }

    /** Programs of before left a judgement wherever turns were noted; what they wrote of a contact is as it was. */
    @Test
    void turns_that_were_noted_alone_in_a_record_of_before_decide_nothing_of_a_contact() {
        season.fill(2, 0);
        season.take("attempt.judged", Map.of("attemptId", "attempt0"));
        season.take("attempt.judged", Map.of("attemptId", "attempt1", "reason", "touched a wall", "contactMs", 12_000));
        assertTrue(row("attempt0").counts(), "as long as nobody told a contact");
        for (String attempt : List.of("attempt0", "attempt1")) {
            season.take("attempt.noted", AttemptNoted.blank(attempt).touched("1 contact"));
        }
        assertEquals("undecided: 1 contact", row("attempt0").flight().counts().words());
        assertEquals(
                "left out: touched a wall", row("attempt1").flight().counts().words());
        season.take("attempt.judged", new FlightJudged("attempt0", null, null, true, null));
        assertTrue(row("attempt0").counts());
    }

    @Test
    void winds_of_a_batch_give_torques_holds_and_pictures_of_the_flights_that_are_looked_at() {
        season.fill(70, 0);
        BatchOfWinds batch = new BatchWindsStore(tx).of("batch0").orElseThrow();
        assertEquals(20, batch.winds().size(), "ten motors, twice each");
        List<TorqueAtShare> shares = batch.shares(0.7, ZoneOffset.UTC);
        assertEquals(20, shares.size());
        assertEquals("attempt0", shares.get(0).id());
        assertEquals(20, batch.holds().size());
        assertEquals(
                3,
                batch.picture(Set.of("attempt0", "attempt1", "attempt60"), UnitSystem.METRIC)
                        .series()
                        .size());
        assertTrue(batch.picture(Set.of("attempt15"), UnitSystem.METRIC).isEmpty(), "a flight of another batch");
        assertFalse(batch.heldPicture(Set.of("attempt0"), UnitSystem.METRIC).isEmpty());
        assertTrue(new BatchWindsStore(tx).of("none").isEmpty());
    }

    @Test
    void lines_for_next_time_are_read_back_in_their_order_and_a_later_word_takes_their_place() {
        season.fill(1, 0);
        season.take("event.change-next-time", new ChangeNextTime("event0", List.of("b", "a", "c")));
        assertEquals(List.of("b", "a", "c"), ReviewFacts.change(tx, "event0").lines());
        season.take("event.change-next-time", new ChangeNextTime("event0", List.of("d")));
        assertEquals(List.of("d"), ReviewFacts.changes(tx).get(0).change().lines());
        season.take("event.change-next-time", new ChangeNextTime("event0", List.of()));
        assertTrue(ReviewFacts.changes(tx).isEmpty());
    }
}
