package org.skeinday.exchange;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.skeinday.attempt.Aloft;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.UseNumber;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EntryMotor;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.ModelNote;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.Terms;
import org.skeinday.contest.WindowAdded;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorInspected;
import org.skeinday.motor.MotorStep;
import org.skeinday.steps.KnownLists;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.WindJudged;

/**
 * Everything in a record that files can carry.
 *
 * @param attempts as they stand now
 * @param hows how an official time came about, by attempt id
 * @param readings of each attempt as they came in
 * @param people person id to display name
 */
public record Day(
        List<EventAdded> events,
        List<ModelAdded> models,
        List<BatchAdded> batches,
        List<MotorAdded> motors,
        List<EntryAdded> entries,
        List<EntryModel> entryModels,
        List<WindowAdded> windows,
        List<CrewAdded> crew,
        List<PracticeFlown> flights,
        List<AttemptImported> attempts,
        Map<String, String> hows,
        List<WatchTaken> watches,
        List<ReadingTaken> readings,
        Map<String, String> people,
        More more) {
    /**
     * What else was prepared and noted.
     *
     * @param inspections how motors were found and where they are
     * @param noted of winds and flights, by attempt
     * @param quiet when nobody was helped
     * @param lists checklists in force, and which of them nobody worded
     * @param aloft what was caught or steered in the air
     * @param judged official flights of which somebody has said whether they count
     * @param marks where numbers of flights came from, and which were confirmed
     * @param places where attempts were wound, as those winding places were then; each with a name
     * @param breaks of motors that are broken, each with what the coach said of it
     * @param held what was read of holds, each under the id of its attempt
     * @param heldConfirmed readings of holds of which somebody said that they were so, each under the id of its attempt
     * @param heldOut holds that enter no fit, each under the id of its attempt, and why
     * @param uses which use of its motor each flight was; of a record none, as there its rows tell it
     */
    public record More(
            List<Terms> terms,
            List<FlightRules> flightRules,
            List<EntryMotor> entryMotors,
            List<EntryTask> entryTasks,
            List<StationAdded> stations,
            List<ModelNote> notes,
            List<MotorInspected> inspections,
            List<AttemptNoted> noted,
            List<Quiet> quiet,
            KnownLists lists,
            List<FlightJudged> judged,
            List<Aloft> aloft,
            List<ValueMarked> marks,
            List<AttemptStation> places,
            List<MotorStep> breaks,
            List<WindHeld> held,
            List<WindConfirmed> heldConfirmed,
            List<WindJudged> heldOut,
            List<UseNumber> uses) {
        public static final More NONE = new More(
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                KnownLists.NONE,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());

        private More with(List<UseNumber> of) {
            return new More(
                    terms,
                    flightRules,
                    entryMotors,
                    entryTasks,
                    stations,
                    notes,
                    inspections,
                    noted,
                    quiet,
                    lists,
                    judged,
                    aloft,
                    marks,
                    places,
                    breaks,
                    held,
                    heldConfirmed,
                    heldOut,
                    of);
        }
    }

    /** An empty record. */
    public static final Day EMPTY = new Day(
            List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
            List.of(), Map.of(), List.of(), List.of(), Map.of(), More.NONE);

    /** What an event asks beside its rules; of one that says nothing, what then holds. */
    public Terms termsOf(String event) {
        return more.terms.stream()
                .filter(t -> t.eventId().equals(event))
                .findFirst()
                .orElseGet(() -> Terms.free(event));
    }

    /** Which flights of an event are official; of one that says nothing, what then holds. */
    public FlightRules rulesOf(String event) {
        return more.flightRules.stream()
                .filter(r -> r.eventId().equals(event))
                .findFirst()
                .orElseGet(() -> FlightRules.usual(event));
    }

    /** The same with these motors in place of its own, and with the use that each flight was of its motor. */
    Day with(List<MotorAdded> others, List<UseNumber> uses) {
        return new Day(
                events,
                models,
                batches,
                others,
                entries,
                entryModels,
                windows,
                crew,
                flights,
                attempts,
                hows,
                watches,
                readings,
                people,
                more.with(uses));
    }

    /** The same without one thing of a file, for a form that changes it: what hangs on it stays. */
    public Day without(String file, String id) {
        return new Day(
                others(file, "event.csv", events, e -> e.id().equals(id)),
                others(file, "models.csv", models, m -> m.id().equals(id)),
                others(file, "batches.csv", batches, b -> b.id().equals(id)),
                others(file, "motors.csv", motors, m -> m.id().equals(id)),
                others(file, "entries.csv", entries, e -> e.id().equals(id)),
                others(file, "entries.csv", entryModels, m -> m.entryId().equals(id)),
                others(file, "windows.csv", windows, w -> w.id().equals(id)),
                others(file, CrewFile.NAME, crew, c -> CrewLineId.of(c).is(id)),
                others(file, "flights.csv", flights, f -> f.id().equals(id)),
                others(file, "attempts.csv", attempts, a -> a.id().equals(id)),
                hows,
                watches,
                readings,
                file.equals(CrewFile.NAME) ? otherPeople(id) : people,
                new More(
                        others(
                                file,
                                TermsFile.NAME,
                                more.terms,
                                t -> t.eventId().equals(id)),
                        others(
                                file,
                                FlightRulesFile.NAME,
                                more.flightRules,
                                r -> r.eventId().equals(id)),
                        others(
                                file,
                                "entries.csv",
                                more.entryMotors,
                                m -> m.entryId().equals(id)),
                        others(
                                file,
                                "entries.csv",
                                more.entryTasks,
                                t -> t.entryId().equals(id)),
                        others(file, "stations.csv", more.stations, s -> s.id().equals(id)),
                        others(file, "notes.csv", more.notes, n -> n.id().equals(id)),
                        more.inspections,
                        more.noted,
                        more.quiet,
                        more.lists,
                        more.judged,
                        more.aloft,
                        more.marks,
                        more.places,
                        more.breaks,
                        more.held,
                        more.heldConfirmed,
                        more.heldOut,
                        more.uses));
    }

    /** The same with one motor or flight alone of all of its kind, for one row of its file; other files have few rows. */
    Day only(String file, String id) {
        boolean motor = file.equals("motors.csv");
        boolean flight = file.equals("flights.csv");
        return !motor && !flight
                ? this
                : new Day(
                        events,
                        models,
                        batches,
                        flight
                                ? motors
                                : motors.stream().filter(m -> m.id().equals(id)).toList(),
                        entries,
                        entryModels,
                        windows,
                        crew,
                        flight ? flights.stream().filter(f -> f.id().equals(id)).toList() : flights,
                        attempts,
                        hows,
                        watches,
                        readings,
                        people,
                        more);
    }

    private static <T> List<T> others(String file, String of, List<T> all, Predicate<T> is) {
        return file.equals(of) ? all.stream().filter(is.negate()).toList() : all;
    }

    /** So that a person whose name is corrected is not taken for somebody new. */
    private Map<String, String> otherPeople(String crewId) {
        Map<String, String> others = new HashMap<>(people);
        others.remove(CrewLineId.parse(crewId).personId());
        return Map.copyOf(others);
    }
}
