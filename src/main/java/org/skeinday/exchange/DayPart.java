package org.skeinday.exchange;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorUses;
import org.skeinday.contest.EventAdded;
import org.skeinday.review.Season;

/**
 * One event or the days of one season out of a record, with everything that it names: so that another laptop that knows
 * nothing can take it in.
 */
public final class DayPart {
    private final Day day;
    private final Set<String> events;
    private final Predicate<LocalDate> flownOn;
    private final ZoneId zone;
    private final boolean one;

    /** @param flownOn days whose practice belongs to it; an event that was asked for alone has its own */
    private DayPart(Day day, Set<String> events, Predicate<LocalDate> flownOn, ZoneId zone, boolean one) {
        this.one = one;
        this.day = day;
        this.events = events;
        this.flownOn = flownOn;
        this.zone = zone;
    }

    /** What all of it is called. */
    public static final String ALL = "the whole record";

    /** What a season of it is called. */
    public static String words(Season season) {
        return "season " + season.words();
    }

    /** All of it. @param uses of the record */
    public static Day whole(Day day, MotorUses uses, ZoneId zone) {
        return new PartUses(day, uses, zone).told(null);
    }

    /** @param uses of the record @param event its id */
    public static Day ofEvent(Day day, MotorUses uses, String event, ZoneId zone) {
        LocalDate on = day.events().stream()
                .filter(e -> e.id().equals(event))
                .map(e -> LocalDate.parse(e.day()))
                .findFirst()
                .orElseThrow();
        Day part = new DayPart(day, Set.of(event), d -> false, zone, true).day();
        return new PartUses(part, uses, zone).told(on);
    }

    /** @param uses of the record */
    public static Day ofSeason(Day day, MotorUses uses, Season season, ZoneId zone) {
        return ofDays(day, uses, season.first(), season.last(), zone);
    }

    /** Events and practice from the first day to the last, both among them. @param uses of the record */
    public static Day ofDays(Day day, MotorUses uses, LocalDate first, LocalDate last, ZoneId zone) {
        Predicate<LocalDate> within = d -> !d.isBefore(first) && !d.isAfter(last);
        Set<String> events = day.events().stream()
                .filter(e -> within.test(LocalDate.parse(e.day())))
                .map(EventAdded::id)
                .collect(Collectors.toSet());
        Day part = new DayPart(day, events, within, zone, false).day();
        return new PartUses(part, uses, zone).told(last);
    }

    private static <T> List<T> kept(List<T> all, Function<T, @Nullable String> id, Set<String> ids) {
        return all.stream().filter(t -> ids.contains(id.apply(t))).toList();
    }

    private static <T> Set<String> ids(List<T> all, Function<T, @Nullable String> id) {
        return all.stream().map(id).filter(Objects::nonNull).collect(Collectors.toSet());
    }

    private Day day() {
        var entries = kept(day.entries(), e -> e.eventId(), events);
        Set<String> entryIds = ids(entries, e -> e.id());
        var attempts = kept(day.attempts(), a -> a.eventId(), events);
        Set<String> attemptIds = ids(attempts, a -> a.id());
        Set<String> nights =
                ids(day.events().stream().filter(EventAdded::ofPractice).toList(), e -> e.id());
        var flights = day.flights().stream()
                .filter(f -> nights.contains(f.eventId()) && !one
                        ? flownOn.test(LocalDate.ofInstant(Instant.ofEpochMilli(f.flownAtMs()), zone))
                        : events.contains(f.eventId()))
                .toList();
        var entryModels = kept(day.entryModels(), m -> m.entryId(), entryIds);
        var entryMotors = kept(day.more().entryMotors(), m -> m.entryId(), entryIds);
        var noted = kept(day.more().noted(), n -> n.attemptId(), attemptIds);
        Set<String> motorIds = union(
                ids(attempts, a -> a.motorId()),
                ids(flights, f -> f.motorId()),
                ids(entryMotors, m -> m.motorId()),
                ids(noted, n -> n.spareMotorId()));
        Set<String> modelIds = union(
                ids(attempts, a -> a.modelId()), ids(flights, f -> f.modelId()), ids(entryModels, m -> m.modelId()));
        var motors = kept(day.motors(), m -> m.id(), motorIds);
        var crew = day.crew().stream()
                .filter(c -> c.eventId().isEmpty() || events.contains(c.eventId()))
                .toList();
        var tasks = kept(day.more().entryTasks(), t -> t.entryId(), entryIds);
        var watches = kept(day.watches(), w -> w.attemptId(), attemptIds);
        var readings = kept(day.readings(), r -> r.attemptId(), attemptIds);
        var breaks = kept(day.more().breaks(), b -> b.motorId(), motorIds);
        var marks = kept(
                day.more().marks(),
                m -> m.flightId(),
                union(attemptIds, ids(flights, f -> f.id()), ids(breaks, b -> b.id())));
        Set<String> people = union(
                ids(marks, m -> m.confirmedBy()),
                ids(crew, c -> c.personId()),
                ids(tasks, t -> t.personId()),
                ids(watches, w -> w.personId()),
                ids(readings, r -> r.personId()));
        Day.More more = day.more();
        return new Day(
                kept(day.events(), e -> e.id(), union(events, ids(flights, f -> f.eventId()))),
                kept(day.models(), m -> m.id(), modelIds),
                kept(day.batches(), b -> b.id(), ids(motors, m -> m.batchId())),
                motors,
                entries,
                entryModels,
                kept(day.windows(), w -> w.eventId(), events),
                crew,
                flights,
                attempts,
                only(day.hows(), attemptIds),
                watches,
                readings,
                only(day.people(), people),
                new Day.More(
                        kept(more.terms(), t -> t.eventId(), events),
                        kept(more.flightRules(), r -> r.eventId(), events),
                        entryMotors,
                        tasks,
                        more.stations(),
                        kept(more.notes(), n -> n.modelId(), modelIds),
                        kept(more.inspections(), i -> i.motorId(), motorIds),
                        noted,
                        kept(more.quiet(), q -> q.attemptId(), attemptIds),
                        more.lists(),
                        kept(more.judged(), j -> j.attemptId(), attemptIds),
                        kept(more.aloft(), a -> a.attemptId(), attemptIds),
                        marks,
                        kept(more.places(), p -> p.attemptId(), attemptIds),
                        breaks,
                        kept(more.held(), h -> h.windId(), attemptIds),
                        kept(more.heldConfirmed(), h -> h.windId(), attemptIds),
                        kept(more.heldOut(), h -> h.windId(), attemptIds),
                        more.uses()));
    }

    @SafeVarargs
    private static Set<String> union(Set<String>... sets) {
        Set<String> all = new HashSet<>();
        Stream.of(sets).forEach(all::addAll);
        return all;
    }

    private static <V> Map<String, V> only(Map<String, V> all, Set<String> ids) {
        Map<String, V> left = new LinkedHashMap<>(all);
        left.keySet().retainAll(ids);
        return Map.copyOf(left);
    }
}
