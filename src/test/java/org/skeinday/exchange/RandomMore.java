package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.attempt.Aloft;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.Contacts;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.TimedBy;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryMotor;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.ModelNote;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.Terms;
import org.skeinday.contest.WinderOutput;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.motor.BreakPlace;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorInspected;
import org.skeinday.motor.MotorStep;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.KnownLists;
import org.skeinday.steps.Step;
import org.skeinday.steps.store.ListStore;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;
import org.skeinday.winding.HeldDoubts;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.WindJudged;

/** What a random day has beside its rows of old: terms, declared motors, tasks, winding places, notes. */
final class RandomMore {
    private final RandomDay day;

    RandomMore(RandomDay day) {
        this.day = day;
    }

    Day.More more(
            List<EventAdded> events,
            List<EntryAdded> entries,
            List<ModelAdded> models,
            List<MotorAdded> motors,
            List<AttemptImported> attempts,
            List<ReadingTaken> readings,
            List<CrewAdded> crew,
            List<PracticeFlown> flights) {
        List<Terms> terms = new ArrayList<>();
        events.stream().filter(e -> day.maybe()).forEach(e -> terms.add(terms(e)));
        List<FlightRules> rules = new ArrayList<>();
        events.stream().filter(e -> day.maybe()).forEach(e -> rules.add(rules(e)));
        List<EntryMotor> declared = new ArrayList<>();
        List<EntryTask> tasks = new ArrayList<>();
        for (EntryAdded entry : entries) {
            motors.stream().filter(m -> day.maybe()).forEach(m -> declared.add(new EntryMotor(entry.id(), m.id())));
            crew.stream()
                    .filter(c ->
                            day.maybe() && (c.eventId().isEmpty() || c.eventId().equals(entry.eventId())))
                    .forEach(c -> CrewAdded.ROLES.stream()
                            .filter(c::does)
                            .filter(task -> tasks.stream()
                                    .noneMatch(t -> t.entryId().equals(entry.id())
                                            && t.task().equals(task)))
                            .forEach(task -> tasks.add(new EntryTask(entry.id(), task, c.personId()))));
        }
        List<AttemptNoted> noted = new ArrayList<>();
        List<Quiet> quiet = new ArrayList<>();
        List<FlightJudged> judged = new ArrayList<>();
        List<Aloft> aloft = new ArrayList<>();
        List<StationAdded> stations = day.list(day.upTo(3), this::station);
        List<AttemptStation> places = new ArrayList<>();
        for (AttemptImported attempt : attempts) {
            if (day.maybe()) {
                noted.add(noted(attempt, motors));
            }
            if (day.maybe()) {
                quiet.add(new Quiet(attempt.id(), day.moment(), day.momentOrNull()));
            }
            if (day.maybe()) {
                boolean freed = day.maybe();
                aloft.add(new Aloft(
                        attempt.id(),
                        42_300L,
                        freed ? (Long) 45_600L : null,
                        day.maybe() ? "person" : "building",
                        !freed && day.maybe(),
                        Aloft.STEERED.get(day.upTo(2))));
            }
            if (day.maybe()) {
                String written = noted.stream()
                        .filter(n -> n.attemptId().equals(attempt.id()))
                        .map(n -> String.valueOf(n.contacts()))
                        .collect(Collectors.joining());
                int known = Contacts.known(
                        written,
                        aloft.stream().anyMatch(a -> a.attemptId().equals(attempt.id()))
                                ? List.of(42_300L)
                                : List.of());
                judged.add(
                        day.maybe()
                                ? FlightJudged.knowing(known, attempt.id(), null, null)
                                : FlightJudged.knowing(
                                        known, attempt.id(), "touched a beam", day.maybe() ? 12_300L : null));
            }
            if (day.maybe()) {
                boolean prepared = !stations.isEmpty() && day.maybe();
                StationAdded at = prepared ? day.one(stations) : station();
                places.add(AttemptStation.of(attempt.id(), at));
            }
        }
        List<MotorInspected> inspections =
                motors.stream().filter(m -> day.maybe()).map(this::inspected).toList();
        List<WindHeld> held =
                attempts.stream().filter(a -> day.maybe()).map(this::held).toList();
        return new Day.More(
                terms,
                rules,
                declared,
                tasks,
                stations,
                models.isEmpty() ? List.of() : day.list(day.upTo(4), () -> note(models)),
                inspections,
                noted,
                quiet,
                new KnownLists(
                        ListStore.shipped().stream().map(this::revised).toList(), ListStore.shipped(), List.of()),
                judged,
                aloft,
                Stream.concat(
                                flights.stream().flatMap(f -> marks(f.flight(ValueMarks.NONE), crew).stream()),
                                attempts.stream()
                                        .flatMap(a ->
                                                ofAttempt(a, timed(a, events, readings, noted), note(a, noted), crew)))
                        .toList(),
                places,
                motors.stream().filter(m -> day.maybe()).map(this::broke).toList(),
                held,
                held.stream()
                        .filter(h -> day.maybe())
                        .map(h -> new WindConfirmed(
                                HeldDoubts.id(h.windId(), h.readings().get(0)), h.windId()))
                        .toList(),
                held.stream()
                        .filter(h -> day.maybe())
                        .map(h -> new WindJudged(h.windId(), "to a metronome", null, 0))
                        .toList(),
                List.of());
    }

    private MotorStep broke(MotorAdded motor) {
        String torque = day.maybe() ? day.typed(0.01, 3, "in-ozf") : null;
        return new MotorStep(
                day.id(),
                motor.id(),
                "break",
                "broken",
                day.moment(),
                null,
                "file",
                null,
                null,
                null,
                null,
                false,
                null,
                null,
                day.maybe() ? Double.valueOf(day.number(1, 9000)) : null,
                torque == null ? null : Torque.parse(torque).newtonMillimetres(),
                torque,
                torque == null || day.maybe() ? null : day.name(60),
                null,
                day.maybe() ? null : EnumWords.of(BreakPlace.class).get(day.upTo(5)),
                day.maybe() ? null : (Boolean) day.maybe());
    }

    private WindHeld held(AttemptImported attempt) {
        return new WindHeld(
                attempt.id(),
                HeldRead.parse(
                        "0.7" + day.upTo(9) + " in-ozf at 0:40; 4.1 mN-m at 1:" + (10 + day.upTo(49)),
                        "in-ozf",
                        day.maybe() ? null : (Double) (0.01 + day.upTo(90) / 97.0)));
    }

    private static AttemptNoted note(AttemptImported attempt, List<AttemptNoted> noted) {
        return noted.stream()
                .filter(n -> n.attemptId().equals(attempt.id()))
                .findFirst()
                .orElseGet(() -> AttemptNoted.blank(attempt.id()));
    }

    private static TimedBy timed(
            AttemptImported attempt, List<EventAdded> events, List<ReadingTaken> readings, List<AttemptNoted> noted) {
        return new TimedBy(
                attempt.officialMs(),
                events.stream().anyMatch(e -> e.id().equals(attempt.eventId()) && e.dayKind() == DayKind.VISITING),
                note(attempt, noted).fromPaper(),
                readings.stream()
                        .filter(r -> r.attemptId().equals(attempt.id()) && !Boolean.TRUE.equals(r.takenBack()))
                        .toList());
    }

    /** What is said of its numbers; a time that was tapped is said to be, as a record says it. */
    private Stream<ValueMarked> ofAttempt(
            AttemptImported attempt, TimedBy timed, AttemptNoted note, List<CrewAdded> crew) {
        Integer stop = attempt.stopCountCrankTurns();
        var flight = new Flight(
                attempt.id(),
                true,
                null,
                null,
                0,
                10,
                stop == null ? null : (Double) stop.doubleValue(),
                note.backOffCrankTurns(),
                note.remainingCrankTurns(),
                note.peakTorqueNmm(),
                attempt.launchTorqueNmm(),
                timed.timeMs(),
                FlightEvidence.good());
        List<ValueMarked> marks = marks(flight, crew);
        Double time = flight.number(Measured.TIME);
        if (time != null && marks.stream().noneMatch(m -> m.about() == Measured.TIME)) {
            timed.marked(ValueMarks.NONE)
                    .of(Measured.TIME, time)
                    .ifPresent(
                            m -> marks.add(new ValueMarked(flight.id(), "time", time, m.source(), false, null, null)));
        }
        return marks.stream();
    }

    /** Of some of its numbers, and at times of the flight itself; each confirmed by somebody else, or nobody knows by whom. */
    private List<ValueMarked> marks(Flight flight, List<CrewAdded> crew) {
        List<ValueMarked> marks = new ArrayList<>();
        for (Measured what : Measured.values()) {
            Double number = flight.number(what);
            if (day.maybe() && (number != null || what == Measured.FLIGHT)) {
                boolean confirmed = day.maybe();
                String by = crew.isEmpty() || day.maybe() ? null : day.one(crew).personId();
                Source source = Source.values()[day.upTo(Source.values().length - 1)];
                marks.add(new ValueMarked(
                        flight.id(), what.word(), number, source.word(), confirmed, confirmed ? by : null, null));
            }
        }
        return marks;
    }

    /** As shipped, or worded anew by a coach. */
    private Checklist revised(Checklist list) {
        return day.maybe()
                ? list
                : new Checklist(
                        list.id(),
                        list.revision() + 1 + day.upTo(5),
                        list.title() + " anew, \"ours\"",
                        list.moment(),
                        list.way(),
                        list.aloud(),
                        list.next(),
                        fewer(list));
    }

    /** Some of the items, the first ones; what winding waits for stays. */
    private List<Step> fewer(Checklist list) {
        List<Step> first = list.steps().subList(0, 2 + day.upTo(list.steps().size() - 2));
        return list.steps().stream()
                .filter(step -> first.contains(step) || step.hasNoOverride())
                .toList();
    }

    /** No limit below what random motors weigh: what breaks the terms can not be in a record. */
    private Terms terms(EventAdded event) {
        String limit = day.maybe() ? day.typed(400, 490, "g") : null;
        String least = day.maybe() ? day.typed(0.5, 90, "g") : null;
        boolean log = day.maybe();
        return new Terms(
                event.id(),
                Terms.DEVICES.get(day.upTo(2)),
                Terms.OUTSIDE_HELP.get(day.upTo(1)),
                limit == null ? null : Mass.parse(limit).grams(),
                limit,
                least == null ? null : Mass.parse(least).grams(),
                least,
                day.maybe() ? 6 + day.upTo(94) : null,
                day.maybe(),
                log ? 1 + day.upTo(199) : 0,
                log ? "motor,time" : day.maybe() ? "note" : "",
                day.textOrNull(120),
                day.textOrNull(400),
                day.maybe() ? 1 + day.upTo(1439) : null,
                day.maybe() ? (Long) (long) day.upTo(60_000) : null,
                Terms.IF_ONE.get(day.upTo(1)),
                day.maybe() ? (Long) (1_700_000_000_000L + 60_000L * day.upTo(1_000_000)) : null);
    }

    private FlightRules rules(EventAdded event) {
        Long watched = day.maybe() ? (Long) (long) day.upTo(600_000) : null;
        int best = day.upTo(Math.min(5, event.attempts() - 1));
        return new FlightRules(
                event.id(),
                watched,
                watched == null || day.maybe() ? null : (Long) (long) day.upTo((int) (long) watched),
                day.upTo(10),
                day.maybe() ? day.upTo(500) : null,
                FlightRules.IF_SHORT.get(day.upTo(1)),
                FlightRules.COLLISION.get(day.upTo(1)),
                1 + day.upTo(3_599_999),
                FlightRules.IF_SILENT.get(day.upTo(1)),
                FlightRules.TIES.get(day.upTo(2)),
                best,
                day.upTo(Math.min(5, event.attempts() - 1 - best)),
                day.upTo(3_600_000),
                FlightRules.INSIDE.get(day.upTo(1)),
                watched != null ? (day.maybe() ? "less" : null) : (day.maybe() ? "ends" : null),
                day.maybe() ? FlightRules.START_AGAIN.get(day.upTo(1)) : null,
                day.maybe() ? FlightRules.MEAN_RANKS.get(day.upTo(1)) : null);
    }

    private StationAdded station() {
        String zero = day.maybe() ? day.typed(0.01, 3, "in-ozf") : null;
        String known = day.maybe() ? day.typed(1, 90, "g") : null;
        String output = day.maybe() ? WinderOutput.WORDS.get(day.upTo(1)) : null;
        String division = day.maybe() ? day.typed(0.01, 3, "in-ozf") : null;
        return new StationAdded(
                day.id(),
                day.name(120),
                StationAdded.MOUNTS.get(day.upTo(2)),
                day.maybe() ? Double.valueOf(day.number(0.1, 1000)) : null,
                day.maybe() ? "2026-02-1" + day.upTo(9) : null,
                day.maybe() ? Double.valueOf(day.number(1, 50)) : null,
                day.maybe() ? "2026-03-1" + day.upTo(9) : null,
                StationAdded.COUNTERS.get(day.upTo(2)),
                day.maybe(),
                day.textOrNull(60),
                zero == null ? null : Torque.parse(zero).newtonMillimetres(),
                zero,
                day.maybe() ? "0.2=0.21 | 0.4=0.41 | 0.6=" + Numbers.text(0.5 + day.upTo(9) / 64.0) : null,
                null,
                known == null ? null : Mass.parse(known).grams(),
                known,
                known == null ? null : Mass.parse(known).grams(),
                known,
                division == null ? null : Torque.parse(division).newtonMillimetres(),
                division,
                division == null ? null : Torque.parse(division).newtonMillimetres(),
                division,
                output,
                output == null ? null : "2026-04-1" + day.upTo(9),
                null);
    }

    private ModelNote note(List<ModelAdded> models) {
        long at = day.moment();
        return new ModelNote(
                day.id(),
                day.one(models).id(),
                ModelNote.KINDS.get(day.upTo(1)),
                at,
                day.text(400),
                day.maybe() ? Long.valueOf(at + day.upTo(90_000_000)) : null);
    }

    private MotorInspected inspected(MotorAdded motor) {
        String mass = day.maybe() ? day.typed(0.1, 9, "g") : null;
        return new MotorInspected(
                motor.id(),
                mass == null ? null : Mass.parse(mass).grams(),
                mass,
                MotorInspected.PLACES.get(day.upTo(2)),
                day.momentOrNull());
    }

    private AttemptNoted noted(AttemptImported attempt, List<MotorAdded> motors) {
        String peak = day.maybe() ? day.typed(0.01, 3, "in-ozf") : null;
        return new AttemptNoted(
                attempt.id(),
                day.maybe() ? day.one(motors).id() : null,
                peak == null ? null : Torque.parse(peak).newtonMillimetres(),
                peak,
                day.maybe() ? Double.valueOf(day.number(0, 10_000)) : null,
                day.maybe() ? Double.valueOf(day.number(0, 100_000)) : null,
                day.textOrNull(400),
                day.textOrNull(400),
                day.maybe() ? Long.valueOf(day.upTo(7_200_000)) : null,
                day.momentOrNull(),
                day.maybe());
    }
}
