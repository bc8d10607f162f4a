package org.skeinday.prepare.web;

import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.prepare.Sheet;

/** What a new one most likely has, so that a form needs few keys. */
final class FirstValues {
    private static final int QUARTER = 15;
    private static final int MORNING = 10;
    private static final long MINUTE_MS = 60_000;

    /** What is measured or counted of one thing, and so is not that of the next. */
    private static final Set<String> ITS_OWN = Set.of(
            "mass",
            "breaking turns",
            "uses",
            "inspected mass",
            "place",
            "inspected",
            "opens",
            "closes",
            "clean winds",
            "k",
            "pull test",
            "pull tested",
            "ratio checked",
            "zero",
            "span",
            "calibrated",
            "known mass",
            "scale reads");

    /** What is measured or said of one flight: a value that a form only proposed is no measurement of the next. */
    private static final Set<String> OF_ITS_FLIGHT = Set.of(
            "crank turns", "stop torque", "launch torque", "back off", "time", "remaining", "note", "valid", "reason");

    private final PrepareContext desk;
    private final Sheet thing;
    private final Day day;

    FirstValues(PrepareContext desk, Sheet thing, Day day) {
        this.desk = desk;
        this.thing = thing;
        this.day = day;
    }

    /** By column. */
    Map<String, String> of() {
        Map<String, String> values = new HashMap<>();
        for (Column column : DayRows.columns(thing.file())) {
            values.put(column.name(), column.otherwise());
        }
        if (values.containsKey("event") && thing != Sheet.CREW) {
            event().ifPresent(event -> values.put("event", event.name()));
        }
        if (values.containsKey("team")) {
            team().ifPresent(team -> values.put("team", team));
        }
        ofKind(values);
        return values;
    }

    /** The same for one more like that row: its name, its mass, its hours and all that was measured are its own. */
    Map<String, String> like(Map<String, String> row) {
        Map<String, String> values = of();
        row.forEach((column, text) -> {
            if (!isItsOwn(column)) {
                values.put(column, text);
            }
        });
        if (thing == Sheet.WINDOWS) {
            hours(values);
        }
        return values;
    }

    private boolean isItsOwn(String column) {
        return ITS_OWN.contains(column)
                || column.equals(thing.shown().get(0))
                || (thing == Sheet.FLIGHTS && OF_ITS_FLIGHT.contains(column));
    }

    private void ofKind(Map<String, String> values) {
        switch (thing) {
            case EVENTS -> values.put("day", LocalDate.now(desk.clock()).toString());
            case NOTES -> values.put("when", Lists.minute(desk.clock()));
            case ENTRIES -> values.put("own", isOwn() ? "yes" : "no");
            case WINDOWS -> hours(values);
            case MOTORS -> {
                if (day.batches().size() == 1) {
                    values.put("batch", day.batches().get(0).name());
                }
            }
            default -> {}
        }
    }

    private Optional<EventAdded> event() {
        return switch (thing) {
            case TERMS, RULES, ENTRIES, WINDOWS -> LikelyEvent.of(desk, day, thing);
            default -> desk.atHand();
        };
    }

    /** The only one that there is, or that of an own entry. */
    private Optional<String> team() {
        List<String> teams = Stream.concat(
                        day.models().stream().map(m -> m.team()),
                        day.motors().stream().map(m -> m.team()))
                .distinct()
                .toList();
        return teams.size() == 1
                ? Optional.of(teams.get(0))
                : day.entries().stream().filter(e -> e.own()).findFirst().map(e -> e.team());
    }

    /** A visiting team enters its own; a host first its own, then everybody else. */
    private boolean isOwn() {
        return event().map(event -> event.dayKind() == DayKind.VISITING
                        || day.entries().stream()
                                .noneMatch(e -> e.own() && e.eventId().equals(event.id())))
                .orElse(true);
    }

    /** After the last window of the event; before the first, in its morning, or in the coming quarter of an hour. */
    private void hours(Map<String, String> values) {
        day.events().stream()
                .filter(e -> e.name().equals(values.get("event")))
                .findFirst()
                .ifPresent(event -> {
                    long opens = opens(event);
                    values.put("opens", DayRows.moment(opens, desk.zone()));
                    values.put(
                            "closes",
                            event.windowMinutes() == 0
                                    ? ""
                                    : DayRows.moment(opens + event.windowMinutes() * MINUTE_MS, desk.zone()));
                });
    }

    private long opens(EventAdded event) {
        OptionalLong last = day.windows().stream()
                .filter(w -> w.eventId().equals(event.id()))
                .mapToLong(w -> w.closesAtMs())
                .max();
        ZonedDateTime now = desk.clock().instant().atZone(desk.zone());
        boolean today = event.day().equals(now.toLocalDate().toString());
        if (last.isPresent() && (!today || last.getAsLong() > desk.clock().millis())) {
            return last.getAsLong();
        }
        ZonedDateTime first = today
                ? now.truncatedTo(ChronoUnit.HOURS).plusMinutes((now.getMinute() / QUARTER + 1L) * QUARTER)
                : LocalDate.parse(event.day()).atTime(MORNING, 0).atZone(desk.zone());
        return first.toInstant().toEpochMilli();
    }
}
