package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.Direction;
import org.skeinday.motor.MotorAdded;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

/** Days that the record could hold, awkward ones among them, from a seed. */
public final class RandomDay {
    private static final long BEGIN_MS = 1_760_000_000_000L; // autumn 2025
    private static final long YEAR_MS = 400L * 24 * 60 * 60 * 1000; // so that clocks are put forward and back in it
    private static final String[] BITS = {
        "a", "Z", "é", "ß", "–", "·", "\u4e2d", " ", ",", ";", "\"", "'", "=", "+", "-", "@", "0", "9", ".", "(", "\n",
        "|", "\t"
    };

    private final Random random;
    private int made;

    public RandomDay(long seed) {
        random = new Random(seed);
    }

    public Day day() {
        List<EventAdded> events = list(1 + upTo(2), this::event);
        List<ModelAdded> models = list(upTo(4), this::model);
        List<BatchAdded> batches = list(1 + upTo(2), this::batch);
        List<MotorAdded> motors = list(1 + upTo(5), () -> motor(batches));
        List<EntryAdded> entries = list(1 + upTo(5), () -> entry(events));
        Map<String, String> people = new HashMap<>();
        for (int i = upTo(4); i >= 0; i--) {
            people.put(id(), name(120));
        }
        List<CrewAdded> crew = crew(people, events);
        List<AttemptImported> attempts = new ArrayList<>();
        Map<String, String> hows = new HashMap<>();
        entries.forEach(entry -> attempts.addAll(attempts(entry, models, motors, hows)));
        List<WatchTaken> watches = new ArrayList<>();
        List<ReadingTaken> readings = new ArrayList<>();
        for (AttemptImported attempt : attempts) {
            for (int slot = 1; slot <= upTo(3); slot++) {
                watches.add(
                        new WatchTaken(attempt.id(), slot, name(80), maybe() ? one(people.keySet()) : "", null, null));
            }
            readings.addAll(readings(attempt, people));
        }
        List<PracticeFlown> flights = list(upTo(6), () -> flight(events, models, motors));
        return new Day(
                events,
                models,
                batches,
                motors,
                entries,
                entryModels(entries, models),
                list(upTo(4), () -> window(events, entries)),
                crew,
                flights,
                attempts,
                hows,
                watches,
                readings,
                people,
                new RandomMore(this).more(events, entries, models, motors, attempts, readings, crew, flights));
    }

    interface Make<T> {
        T one();
    }

    <T> List<T> list(int count, Make<T> make) {
        List<T> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(make.one());
        }
        return all;
    }

    int upTo(int most) {
        return random.nextInt(most + 1);
    }

    boolean maybe() {
        return random.nextBoolean();
    }

    String id() {
        return "made-" + made++;
    }

    <T> T one(java.util.Collection<T> of) {
        return new ArrayList<>(new java.util.LinkedHashSet<>(of)).get(random.nextInt(of.size()));
    }

    /** Any text as the record keeps one: without space around it. */
    String text(int longest) {
        var text = new StringBuilder();
        for (int i = 1 + upTo(11); i > 0; i--) {
            text.append(BITS[random.nextInt(BITS.length)]);
        }
        String kept = text.toString().strip();
        return kept.isEmpty() ? "x" : kept.substring(0, Math.min(longest, kept.length()));
    }

    /** A text that no other name is like. */
    String name(int longest) {
        return (text(longest - 12) + " " + made++).replace("|", "/");
    }

    /** The same in one line: what stands on a motor's bag. */
    private String tag() {
        return name(40).replace('\n', ' ').replace('\t', ' ');
    }

    String textOrNull(int longest) {
        return maybe() ? text(longest) : null;
    }

    long moment() {
        long ms = BEGIN_MS + (long) (random.nextDouble() * YEAR_MS);
        return maybe() ? ms - ms % 60_000 : ms;
    }

    Long momentOrNull() {
        return maybe() ? moment() : null;
    }

    double number(double least, double most) {
        double any = least + random.nextDouble() * (most - least);
        return maybe() ? any : Math.rint(any * 100) / 100;
    }

    String typed(double least, double most, String unit) {
        double number = Math.max(least, Math.rint(number(least, most) * 1000) / 1000);
        return Numbers.text(number) + (maybe() ? " " : "") + unit;
    }

    private String length(double least, double most) {
        return switch (upTo(2)) {
            case 0 -> typed(least, most, "mm");
            case 1 -> typed(least / 25 + 1, most / 26, "in");
            default -> (1 + upTo(9)) + " 1/2 in";
        };
    }

    private EventAdded event() {
        int attempts = 1 + upTo(19);
        String ceiling = maybe() ? typed(1, 60, "m") : null;
        boolean lane = maybe(); // one whose typed text was lost
        return new EventAdded(
                id(),
                name(120),
                EventAdded.KINDS.get(upTo(2)),
                "2026-0" + (1 + upTo(8)) + "-1" + upTo(9),
                textOrNull(120),
                ceiling == null ? null : Length.parse(ceiling).millimetres(),
                ceiling,
                attempts,
                upTo(600),
                EventAdded.SCORES.get(upTo(2)),
                1 + upTo(attempts - 1),
                1 + upTo(2),
                EventAdded.TAKES.get(upTo(3)),
                EventAdded.IF_TWO.get(upTo(2)),
                1 + upTo(59_999),
                EventAdded.ROUNDINGS.get(upTo(2)),
                maybe(),
                upTo(3_600_000),
                number(1, 50),
                lane ? Double.valueOf(number(1000, 9000)) : null,
                null);
    }

    private ModelAdded model() {
        String hooks = length(60, 900);
        String mass = maybe() ? typed(1, 90, "g") : null;
        return new ModelAdded(
                id(),
                name(120),
                text(120),
                Direction.WORDS.get(upTo(1)),
                Length.parse(hooks).millimetres(),
                hooks,
                mass == null ? null : Mass.parse(mass).grams(),
                mass,
                maybe() ? 1 + upTo(1) : null);
    }

    private BatchAdded batch() {
        String width = maybe() ? typed(0.2, 90, "mm") : null;
        return new BatchAdded(
                id(),
                name(120),
                width == null ? null : Length.parse(width).millimetres(),
                width,
                null,
                null,
                maybe() ? Double.valueOf(number(10, 100)) : null,
                maybe() ? "2026-02-1" + upTo(9) : null);
    }

    private MotorAdded motor(List<BatchAdded> batches) {
        String loop = length(30, 900);
        String mass = maybe() ? typed(0.1, 9, "g") : typed(0.01, 0.2, "oz");
        return new MotorAdded(
                id(),
                tag(),
                one(batches).id(),
                text(120),
                Direction.WORDS.get(upTo(1)),
                Length.parse(loop).millimetres(),
                loop,
                Mass.parse(mass).grams(),
                mass,
                maybe() ? 50 + upTo(99_900) : null,
                upTo(90));
    }

    private EntryAdded entry(List<EventAdded> events) {
        return new EntryAdded(
                id(), one(events).id(), name(120), text(120), textOrNull(60), maybe(), maybe() ? 1 + upTo(998) : null);
    }

    private List<EntryModel> entryModels(List<EntryAdded> entries, List<ModelAdded> models) {
        List<EntryModel> all = new ArrayList<>();
        for (EntryAdded entry : entries) {
            models.stream().filter(m -> maybe()).forEach(m -> all.add(new EntryModel(entry.id(), m.id())));
        }
        return all;
    }

    private WindowAdded window(List<EventAdded> events, List<EntryAdded> entries) {
        EntryAdded entry = one(entries);
        long opens = moment();
        boolean all = maybe();
        return new WindowAdded(
                id(),
                all ? one(events).id() : entry.eventId(),
                all ? null : entry.id(),
                opens,
                opens + 1 + upTo(10_000_000));
    }

    private List<CrewAdded> crew(Map<String, String> people, List<EventAdded> events) {
        List<CrewAdded> all = new ArrayList<>();
        for (String person : new TreeSet<>(people.keySet())) {
            if (maybe()) {
                all.add(new CrewAdded(person, "", roles(), winds(), null));
            }
            if (maybe()) {
                all.add(new CrewAdded(person, one(events).id(), roles(), winds(), null));
            }
        }
        return all;
    }

    private Integer winds() {
        return maybe() ? upTo(9) : null;
    }

    private String roles() {
        return String.join(",", CrewAdded.ROLES.stream().filter(r -> maybe()).toList());
    }

    private PracticeFlown flight(List<EventAdded> events, List<ModelAdded> models, List<MotorAdded> motors) {
        String stop = maybe() ? typed(0.01, 3, "in-ozf") : null;
        String launch = maybe() ? typed(0.1, 30, "mN·m") : null;
        boolean valid = maybe();
        return new PracticeFlown(
                id(),
                one(events).id(),
                models.isEmpty() || maybe() ? null : one(models).id(),
                one(motors).id(),
                moment(),
                maybe() ? 50 + upTo(99_900) : null,
                number(0.1, 100),
                stop == null ? null : Torque.parse(stop).newtonMillimetres(),
                stop,
                launch == null ? null : Torque.parse(launch).newtonMillimetres(),
                launch,
                maybe() ? Double.valueOf(number(0, 10_000)) : null,
                upTo(7_200_000),
                maybe() ? Double.valueOf(number(0, 100_000)) : null,
                textOrNull(400),
                valid,
                valid ? textOrNull(400) : text(400));
    }

    private List<AttemptImported> attempts(
            EntryAdded entry, List<ModelAdded> models, List<MotorAdded> motors, Map<String, String> hows) {
        List<AttemptImported> all = new ArrayList<>();
        for (int number = 1; number <= upTo(3); number++) {
            String state = AttemptImported.STATES.get(upTo(AttemptImported.STATES.size() - 1));
            boolean closed = state.equals("closed");
            boolean givenUp = state.equals("void") || state.equals("scrubbed");
            String torque = maybe() ? typed(0.1, 30, "N·mm") : null;
            String id = id();
            boolean how = closed && maybe();
            if (how) {
                hows.put(id, text(1000));
            }
            all.add(new AttemptImported(
                    id,
                    entry.eventId(),
                    entry.id(),
                    number,
                    models.isEmpty() || maybe() ? null : one(models).id(),
                    maybe() ? one(motors).id() : null,
                    state,
                    momentOrNull(),
                    momentOrNull(),
                    momentOrNull(),
                    momentOrNull(),
                    momentOrNull(),
                    how ? Long.valueOf(moment()) : momentOrNull(),
                    maybe() ? upTo(400) : null,
                    torque == null ? null : Torque.parse(torque).newtonMillimetres(),
                    torque,
                    closed ? Long.valueOf(upTo(7_200_000)) : null,
                    givenUp ? text(400) : null,
                    state.equals("void") && maybe()));
        }
        return all;
    }

    /** In the order in which the record gives them: by place, those without a moment first, then as they came in. */
    private List<ReadingTaken> readings(AttemptImported attempt, Map<String, String> people) {
        List<ReadingTaken> all = new ArrayList<>();
        List<String> ids = list(upTo(14), this::id);
        long at = moment();
        for (int slot = 1; slot <= 3; slot++) {
            boolean dated = false;
            for (int i = slot - 1; i < ids.size(); i += 3) {
                dated |= maybe();
                at += upTo(2000);
                String corrects = maybe() ? null : maybe() ? one(ids) : "missing";
                all.add(new ReadingTaken(
                        ids.get(i),
                        attempt.id(),
                        slot,
                        ReadingTaken.INSTRUMENTS.get(upTo(1)),
                        maybe() ? one(people.keySet()) : null,
                        upTo(7_200_000),
                        dated ? Long.valueOf(at) : null,
                        corrects,
                        maybe() ? Boolean.TRUE : null,
                        i % 5 == 0 ? Boolean.TRUE : null));
            }
        }
        return all;
    }
}
