package org.skeinday.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Catalogue;
import org.skeinday.attempt.action.CallAttempt;
import org.skeinday.attempt.action.CloseAttempt;
import org.skeinday.attempt.action.GiveUpAttempt;
import org.skeinday.attempt.action.MoveAttempt;
import org.skeinday.attempt.action.TakeWatch;
import org.skeinday.attempt.action.WatchActions;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.exchange.DayFiles;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.Verify;
import org.skeinday.platform.record.Writer;
import org.skeinday.platform.record.WriterSettings;
import org.skeinday.steps.Step;
import org.skeinday.steps.action.StepActions;

class ExchangeRoundTripTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-09T08:00:01.234Z"), ZoneId.systemDefault());

    @TempDir
    Path root;

    private int acts;

    private Map<String, String> export(Path folder) throws Exception {
        return Exchange.write(folder, new TakenOut.Choice(), CLOCK).texts();
    }

    /** Imports into an empty folder, and exports that. */
    private Map<String, String> again(String name, Map<String, String> texts) throws Exception {
        Exchange.Taken taken = Exchange.take(root.resolve(name), texts, 0, CLOCK, new SecureRandom());
        assertEquals(List.of(), taken.errors());
        return export(root.resolve(name));
    }

    private void demo(Path folder) throws Exception {
        Exchange.Taken taken =
                Exchange.take(folder, DayFolder.read(Path.of("demo-data")), 0, CLOCK, new SecureRandom());
        assertEquals(List.of(), taken.errors());
    }

    @Test
    void the_demo_comes_out_of_a_second_folder_as_it_came_out_of_the_first() throws Exception {
        demo(root.resolve("one"));
        Map<String, String> first = export(root.resolve("one"));
        assertEquals(first, again("two", first));
        assertEquals(DayFiles.known(), first.keySet());
    }

    @Test
    void a_day_with_attempts_watches_corrections_and_results_comes_out_again() throws Exception {
        Path one = root.resolve("one");
        demo(one);
        fly(one);
        Map<String, String> first = export(one);
        Map<String, String> second = again("two", first);
        assertEquals(first, second);
        assertTrue(first.get("attempts.csv").contains("Curlew,1,"), first.get("attempts.csv"));
        assertTrue(first.get("attempts.csv").contains("closed"));
        assertTrue(first.get("attempts.csv").contains("\"touched; a beam, \"\"badly\"\"\nand fell\""));
        assertEquals(5, first.get("readings.csv").lines().count());
        assertTrue(first.get("results.csv").contains("Rotor Day,1,Curlew"), first.get("results.csv"));
        assertEquals(
                1, new Verify(Catalogue.projection()).check(root.resolve("two")).records());
    }

    private void fly(Path folder) throws Exception {
        try (ActStore record = ActStore.open(folder, Catalogue.projection(), CLOCK);
                Writer writer =
                        new Writer(record, Catalogue.actKinds(record), CLOCK, WriterSettings.normal(), (t, n) -> {})) {
            String event = record.read(tx -> EventStore.all(tx).get(1).id());
            var entries = record.read(tx -> EntryStore.ofEvent(tx, event));
            String curlew = entries.stream()
                    .filter(e -> e.name().equals("Curlew"))
                    .findFirst()
                    .orElseThrow()
                    .id();
            String knot = entries.stream()
                    .filter(e -> e.name().equals("Knot"))
                    .findFirst()
                    .orElseThrow()
                    .id();
            String model =
                    record.read(tx -> ModelStore.ofEntry(tx, curlew).get(0).id());
            String motor = record.read(tx -> MotorStore.all(tx).get(0).id());
            String person = record.people().names().keySet().stream()
                    .sorted()
                    .findFirst()
                    .orElseThrow();

            String a =
                    say(writer, "attempt.call", new CallAttempt.Call(curlew, model, motor, null, null), person) + "-0";
            say(writer, "watch.take", new TakeWatch.TakePlace(a, 1, null, null, null, null), person);
            say(writer, "watch.take", new TakeWatch.TakePlace(a, 2, null, null, null, null), "");
            say(writer, "gate.pass", new WindingGate.Pass(a, "Mrs Grebe", "checked by word of mouth"), person);
            for (String step : List.of(Step.EYES, Step.LINE)) {
                say(writer, "step.tick", new StepActions.Tick("before-winding", a, step, null, 2, null, null), person);
            }
            say(writer, "attempt.move", new MoveAttempt.Move(a, "winding", null), person);
            say(writer, "attempt.move", new MoveAttempt.Move(a, "holding", null), person);
            say(writer, "watch.release", new WatchActions.SeenRelease(a, 1, null, null), person);
            String wrong = say(
                    writer,
                    "watch.landing",
                    new WatchActions.SeenLanding(a, 1, 112_840, null, null, null, null, null, null),
                    person);
            say(
                    writer,
                    "watch.landing",
                    new WatchActions.SeenLanding(a, 1, 112_940, null, null, wrong, null, null, null),
                    person);
            say(
                    writer,
                    "watch.landing",
                    new WatchActions.SeenLanding(a, 2, 112_871, null, null, "f".repeat(32), null, null, null),
                    "");
            say(writer, "attempt.close", new CloseAttempt.Close(a, null, "one watch only"), person);

            String b = say(writer, "attempt.call", new CallAttempt.Call(curlew, null, null, null, null), person) + "-0";
            say(writer, "attempt.give-up", new GiveUpAttempt.GiveUp(b, "=not wound", null, null), person);
            String c = say(writer, "attempt.call", new CallAttempt.Call(knot, null, null, null, null), person) + "-0";
            say(writer, "attempt.move", new MoveAttempt.Move(c, "released", null), person);
            say(
                    writer,
                    "attempt.give-up",
                    new GiveUpAttempt.GiveUp(c, "touched; a beam, \"badly\"\r\nand fell", null, null),
                    person);
            String d = say(writer, "attempt.call", new CallAttempt.Call(knot, null, null, null, null), person) + "-0";
            say(writer, "watch.take", new TakeWatch.TakePlace(d, 1, null, null, null, null), person);
            say(
                    writer,
                    "watch.landing",
                    new WatchActions.SeenLanding(d, 1, 0, null, null, null, null, null, null),
                    person);
        }
    }

    private String say(Writer writer, String kind, Object content, String person) {
        String id = String.format("%032x", ++acts);
        var act = new Act(id, kind, "laptop", person, CLOCK.instant(), Json.MAPPER.valueToTree(content));
        assertInstanceOf(Answer.Saved.class, writer.submit(act), kind);
        return id;
    }

    @Test
    void an_attempt_taken_back_in_goes_on_with_the_next_number() throws Exception {
        Path one = root.resolve("one");
        demo(one);
        fly(one);
        Path two = root.resolve("two");
        again("two", export(one));
        try (ActStore record = ActStore.open(two, Catalogue.projection(), CLOCK);
                Writer writer =
                        new Writer(record, Catalogue.actKinds(record), CLOCK, WriterSettings.normal(), (t, n) -> {})) {
            String event = record.read(tx -> EventStore.all(tx).get(1).id());
            String curlew = record.read(tx -> EntryStore.ofEvent(tx, event)).stream()
                    .filter(e -> e.name().equals("Curlew"))
                    .findFirst()
                    .orElseThrow()
                    .id();
            say(writer, "attempt.call", new CallAttempt.Call(curlew, null, null, null, null), "");
        }
        assertTrue(export(two).get("attempts.csv").contains("Curlew,3,,,called"));
    }

    @Test
    void results_that_were_changed_are_passed_over() throws Exception {
        demo(root.resolve("one"));
        Map<String, String> first = export(root.resolve("one"));
        var changed = new java.util.TreeMap<>(first);
        changed.put("results.csv", "nonsense;\"of all kinds");
        assertNotEquals(first, changed);
        assertEquals(first, again("two", changed));
    }

    @Test
    void a_failing_import_leaves_the_journal_as_it_was_to_the_byte() throws Exception {
        Path one = root.resolve("one");
        demo(one);
        byte[] journal = Files.readAllBytes(one.resolve("journal.jsonl"));
        byte[] people = Files.readAllBytes(one.resolve("people.json"));
        Exchange.Taken taken = Exchange.take(
                one,
                Map.of("batches.csv", "batch\nD\nA\n", "crew.csv", "name\nNew one\n"),
                0,
                CLOCK,
                new SecureRandom());
        assertEquals(1, taken.errors().size(), taken.errors().toString());
        assertEquals(
                "batches.csv line 3, column \"batch\": the batch 'A' is in the record already; leave this line out, or"
                        + " import into another data folder",
                taken.errors().get(0).text());
        assertEquals(new String(journal, UTF_8), Files.readString(one.resolve("journal.jsonl")));
        assertEquals(new String(people, UTF_8), Files.readString(one.resolve("people.json")));
        assertEquals(4, export(one).get("batches.csv").lines().count());
    }

    @Test
    void everything_that_is_in_the_record_already_is_refused_by_name() throws Exception {
        Path one = root.resolve("one");
        demo(one);
        fly(one);
        Exchange.Taken taken = Exchange.take(one, export(one), 0, CLOCK, new SecureRandom());
        for (String file : DayFiles.known()) {
            // A list that comes in as it is in force brings nothing and is no error.
            assertEquals(
                    !file.equals("results.csv") && !file.equals("checklists.csv"),
                    taken.errors().stream().anyMatch(e -> e.file().equals(file)),
                    file + " of " + taken.errors());
        }
    }

    @Test
    void files_may_build_on_what_the_record_has() throws Exception {
        Path one = root.resolve("one");
        demo(one);
        Exchange.Taken taken = Exchange.take(
                one,
                Map.of(
                        "motors.csv",
                        "tag,batch,team,loop (in),mass (g)\nZ1,A,Reedbank Rotors,18,1.6\n",
                        "entries.csv",
                        "event,entry,team,models\nSaltmarsh Rotor Day,Godwit,Reedbank Rotors,Reed One\n"),
                0,
                CLOCK,
                new SecureRandom());
        assertEquals(List.of(), taken.errors());
        assertTrue(export(one).get("motors.csv").contains("Z1,A,Reedbank Rotors,cw,18 in,1.6 g,,0,,,,,,,,,,,\n"));
    }
}
