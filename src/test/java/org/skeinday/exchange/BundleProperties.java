package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.TestIds;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.LaterUses;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.WindingEvidence;
import org.skeinday.contest.EventAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;

/** Bundles there and back, and against their schema by another library's reader of JSON Schema (draft 2020-12). */
class BundleProperties {
    private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
    private static final JsonSchema SCHEMA =
            JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(Bundle.schema());

    /** Other seeds: -Dskeinday.seed=7 runs from 7 on. */
    static LongStream seeds() {
        long first = Long.getLong("skeinday.seed", 20_261_127L);
        return LongStream.range(first, first + 12);
    }

    private static Map<String, String> texts(Day day) {
        return DayFiles.write(day, ZONE).texts();
    }

    private static DayFiles.Read facts(Map<String, String> texts) {
        return DayFiles.read(texts, Day.EMPTY, TestIds.from("id-"), ZONE, Duration.ZERO);
    }

    private static MotorUses uses(Day day) {
        return MotorUses.of(
                WindingEvidence.ofFiles(
                        day.events(), day.attempts(), day.flights(), day.more().places()),
                day.motors(),
                day.batches());
    }

    private static boolean fits(String json) {
        return SCHEMA.validate(json, InputFormat.JSON).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void any_day_comes_through_a_bundle_as_the_same_facts_and_the_bundle_fits_its_schema(long seed) {
        System.out.println("seed " + seed);
        Map<String, String> texts = texts(new RandomDay(seed).day());
        String json = Bundle.write("any day", texts);
        assertEquals(List.of(), List.copyOf(SCHEMA.validate(json, InputFormat.JSON)), "by the schema");
        Unpacked read = Bundle.read("day.json", json);
        assertEquals(List.of(), read.errors());
        DayFiles.Read facts = facts(read.texts());
        assertEquals(List.of(), facts.errors());
        assertEquals(facts(texts).facts(), facts.facts());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void an_event_alone_brings_what_it_names_and_no_other_event(long seed) {
        Day day = new RandomDay(seed).day();
        for (var event : day.events()) {
            Day part = DayPart.ofEvent(day, uses(day), event.id(), ZONE);
            DayFiles.Read read = facts(texts(part));
            assertEquals(List.of(), read.errors(), event.name());
            assertEquals(List.of(event), part.events());
            assertEquals(
                    day.attempts().stream()
                            .filter(a -> a.eventId().equals(event.id()))
                            .toList(),
                    part.attempts());
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void days_that_hold_all_bring_all_flights_and_days_that_hold_none_bring_none(long seed) {
        Day day = new RandomDay(seed).day();
        Day all = DayPart.ofDays(day, uses(day), LocalDate.of(1900, 1, 1), LocalDate.of(2200, 1, 1), ZONE);
        assertEquals(List.of(), facts(texts(all)).errors());
        assertEquals(day.attempts(), all.attempts());
        assertEquals(day.flights(), all.flights());
        assertEquals(day.readings(), all.readings());
        Day none = DayPart.ofDays(day, uses(day), LocalDate.of(1900, 1, 1), LocalDate.of(1900, 1, 2), ZONE);
        assertTrue(none.attempts().isEmpty()
                && none.flights().isEmpty()
                && none.events().isEmpty());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void each_flight_is_in_the_half_in_which_it_was_flown(long seed) {
        Day day = new RandomDay(seed).day();
        var nights = day.events().stream()
                .filter(e -> e.kind().equals("practice"))
                .map(e -> e.id())
                .toList();
        var days =
                day.flights().stream().map(f -> flownOn(f.flownAtMs())).sorted().toList();
        if (days.isEmpty()) {
            return;
        }
        LocalDate cut = days.get(days.size() / 2);
        Day before = DayPart.ofDays(day, uses(day), LocalDate.of(1900, 1, 1), cut.minusDays(1), ZONE);
        Day after = DayPart.ofDays(day, uses(day), cut, LocalDate.of(2200, 1, 1), ZONE);
        assertEquals(List.of(), facts(texts(before)).errors());
        assertEquals(List.of(), facts(texts(after)).errors());
        assertEquals(
                day.flights().size(), before.flights().size() + after.flights().size());
        before.flights().stream()
                .filter(f -> nights.contains(f.eventId()))
                .forEach(f -> assertTrue(flownOn(f.flownAtMs()).isBefore(cut), f.toString()));
        after.flights().stream()
                .filter(f -> nights.contains(f.eventId()))
                .forEach(f -> assertFalse(flownOn(f.flownAtMs()).isBefore(cut), f.toString()));
    }

    /** As a folder that knew nothing has it, once it has taken files in. */
    private static MotorUses taken(DayFiles.Read read) {
        List<Object> facts = read.facts().stream().map(DayFiles.Named::body).toList();
        WindingEvidence rows = WindingEvidence.ofFiles(
                of(facts, EventAdded.class),
                of(facts, AttemptImported.class),
                of(facts, PracticeFlown.class),
                of(facts, AttemptStation.class));
        return MotorUses.of(
                rows.with(of(facts, LaterUses.class)), of(facts, MotorAdded.class), of(facts, BatchAdded.class));
    }

    private static <T> List<T> of(List<Object> facts, Class<T> kind) {
        return facts.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    /** By motor, which uses its flights were. */
    private static Map<String, List<Integer>> numbers(
            List<MotorAdded> motors, List<AttemptImported> attempts, List<PracticeFlown> flights, MotorUses uses) {
        Map<String, List<Integer>> numbers = new TreeMap<>();
        for (MotorAdded motor : motors) {
            numbers.put(
                    motor.tag(),
                    Stream.concat(
                                    attempts.stream()
                                            .filter(a -> motor.id().equals(a.motorId()))
                                            .map(a -> a.id()),
                                    flights.stream()
                                            .filter(f -> f.motorId().equals(motor.id()))
                                            .map(f -> f.id()))
                            .filter(id -> uses.has(motor.id(), id))
                            .map(id -> uses.number(motor.id(), id))
                            .sorted()
                            .toList());
        }
        return numbers;
    }

    private static void sameNumbers(Day part, MotorUses record) {
        DayFiles.Read read = facts(texts(part));
        List<Object> facts = read.facts().stream().map(DayFiles.Named::body).toList();
        List<MotorAdded> motors = of(facts, MotorAdded.class);
        MotorUses taken = taken(read);
        assertEquals(
                numbers(part.motors(), part.attempts(), part.flights(), record),
                numbers(motors, of(facts, AttemptImported.class), of(facts, PracticeFlown.class), taken));
        for (MotorAdded motor : part.motors()) {
            MotorAdded there = motors.stream()
                    .filter(m -> m.tag().equals(motor.tag()))
                    .findFirst()
                    .orElseThrow();
            assertTrue(taken.of(there.id()) >= uses(part).of(motor.id()), motor.tag() + " is used no less often");
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_part_that_is_read_alone_tells_of_each_flight_the_use_that_it_was_in_the_record(long seed) {
        Day day = new RandomDay(seed).day();
        MotorUses all = uses(day);
        sameNumbers(DayPart.whole(day, all, ZONE), all);
        for (var event : day.events()) {
            sameNumbers(DayPart.ofEvent(day, all, event.id(), ZONE), all);
            LocalDate on = LocalDate.parse(event.day());
            sameNumbers(DayPart.ofDays(day, all, LocalDate.of(1900, 1, 1), on, ZONE), all);
            sameNumbers(DayPart.ofDays(day, all, on, LocalDate.of(2200, 1, 1), ZONE), all);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void in_every_part_each_motor_has_been_used_as_often_as_in_the_record_by_then(long seed) {
        Day day = new RandomDay(seed).day();
        MotorUses all = uses(day);
        Day whole = DayPart.whole(day, all, ZONE);
        day.motors().forEach(m -> assertEquals(all.of(m.id()), uses(whole).of(m.id()), m.tag()));
        assertEquals(day, whole.with(whole.motors(), List.of()), "nothing is left out, so nothing is added");
        for (var event : day.events()) {
            LocalDate on = LocalDate.parse(event.day());
            Day until = DayPart.ofDays(day, all, LocalDate.of(1900, 1, 1), on, ZONE);
            LocalDate last = until.flights().stream() // those of a day's event may be flown later
                    .map(f -> flownOn(f.flownAtMs()))
                    .reduce(on, (a, b) -> b.isAfter(a) ? b : a);
            until.motors()
                    .forEach(m -> assertEquals(
                            all.until(m.id(), last, ZONE), uses(until).of(m.id()), m.tag()));
            Day since = DayPart.ofDays(day, all, on, LocalDate.of(2200, 1, 1), ZONE);
            since.motors().forEach(m -> assertEquals(all.of(m.id()), uses(since).of(m.id()), m.tag() + " since " + on));
        }
    }

    private static LocalDate flownOn(long ms) {
        return LocalDate.ofInstant(java.time.Instant.ofEpochMilli(ms), ZONE);
    }

    /** Another form is another version: whoever changes a column says so here, and in the version when it must. */
    @Test
    void the_schema_is_the_one_that_was_published() throws Exception {
        Files.writeString(Path.of("target/bundle-1.schema.json"), Bundle.schema()); // to look at what changed
        Path published = Path.of("src/test/resources/exchange/bundle-1.schema.json");
        assertEquals(Files.readString(published), Bundle.schema());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {"format": "skeinday-bundle"                             | is no JSON
            {"format": "other", "version": 1}                        | is no bundle of Skeinday
            {"format": "skeinday-bundle", "version": 2}              | newer program
            {"format": "skeinday-bundle", "version": "1"}            | of version "1"
            {"format": "skeinday-bundle", "version": 1, "tables": {"motors": {}}}          | is no array
            {"format": "skeinday-bundle", "version": 1, "tables": {"motors": [3]}}         | is no object
            {"format": "skeinday-bundle", "version": 1, "tables": {"motors": [{"tag": []}]}} | a text or a number
            """)
    void what_is_no_such_bundle_is_refused_with_what_would_be_right(String json, String words) {
        Unpacked read = Bundle.read("day.json", json);
        assertEquals(Map.of(), read.texts());
        assertTrue(read.errors().get(0).text().contains(words), read.errors().toString());
        assertFalse(words.equals("is no JSON") ? fits("{}") : fits(json), "nor by the schema");
    }

    @Test
    void cells_that_look_like_formulas_or_like_numbers_stay_texts() {
        Map<String, String> texts =
                Map.of("batches.csv", "batch\n'=1+1\n007\n1.50\n12\n", "motors.csv", "tag\n\"a \"\"b\"\"\nc\"\n");
        Unpacked read = Bundle.read("day.json", Bundle.write("odd", texts));
        assertEquals(texts.get("batches.csv"), read.texts().get("batches.csv"));
        assertEquals(texts.get("motors.csv"), read.texts().get("motors.csv"));
    }
}
