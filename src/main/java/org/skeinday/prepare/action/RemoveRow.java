package org.skeinday.prepare.action;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.CrewRemoved;
import org.skeinday.exchange.CrewLineId;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.exchange.action.ExchangeDayReader;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Removed;
import org.skeinday.prepare.Sheet;

/** Takes out what was entered by mistake, as long as nothing hangs on it. */
public final class RemoveRow {
    /** What to take out. @param seen the row as the form showed it */
    public record Remove(String file, String id, @Nullable Map<String, String> seen, String zone) {}

    private RemoveRow() {}

    static Decision decide(Tx tx, Remove remove, Map<String, String> people) {
        Sheet thing = Sheet.ofFile(remove.file());
        Day day = ExchangeDayReader.all(tx, people);
        Optional<DayRows.RowText> now = PutRow.row(day, ZoneId.of(remove.zone()), remove.file(), remove.id());
        if (now.isEmpty()) {
            return Decision.unknown("There is no such " + thing.one() + " any more; look again");
        }
        Optional<String> changed = PutRow.changed(remove.seen(), now.get().cells());
        if (changed.isPresent()) {
            return new Decision.Outdated(changed.get());
        }
        List<String> hangs = hangsOn(thing, day, remove.id());
        return hangs.isEmpty()
                ? takenOut(thing, remove.id())
                : Decision.refused("This " + thing.one() + " stays: it has " + String.join(" and ", hangs)
                        + ". Take those out first, or leave it.");
    }

    private static Decision takenOut(Sheet thing, String id) {
        return switch (thing) {
            case EVENTS -> removed("event.removed", id);
            case MODELS -> removed("model.removed", id);
            case BATCHES -> removed("batch.removed", id);
            case MOTORS -> removed("motor.removed", id);
            case ENTRIES -> removed("entry.removed", id);
            case WINDOWS -> removed("window.removed", id);
            case STATIONS -> removed("station.removed", id);
            case NOTES -> removed("note.removed", id);
            case CREW -> Decision.decided(PutRow.TOPICS, crewRemoved(id));
            case TERMS, RULES -> Decision.refused("The " + thing.one() + " can be changed, not taken out.");
            case FLIGHTS -> Decision.refused("A flight is evidence: mark it not valid, with the reason.");
        };
    }

    static Fact crewRemoved(String id) {
        CrewLineId line = CrewLineId.parse(id);
        return Fact.of("crew.removed", new CrewRemoved(line.personId(), line.eventId()));
    }

    private static Decision removed(String kind, String id) {
        return Decision.decided(PutRow.TOPICS, Fact.of(kind, new Removed(id)));
    }

    /** In words, for example "2 windows"; empty when nothing would lose its ground. */
    static List<String> hangsOn(Sheet thing, Day day, String id) {
        List<String> hangs = new ArrayList<>();
        switch (thing) {
            case EVENTS -> {
                count(hangs, "entry", "entries", day.entries(), e -> e.eventId().equals(id));
                count(
                        hangs,
                        "window",
                        "windows",
                        day.windows(),
                        w -> w.eventId().equals(id));
                count(
                        hangs,
                        "flight",
                        "flights",
                        day.flights(),
                        f -> f.eventId().equals(id));
                count(
                        hangs,
                        "line of crew",
                        "lines of crew",
                        day.crew(),
                        c -> c.eventId().equals(id));
            }
            case MODELS -> {
                count(
                        hangs,
                        "entry",
                        "entries",
                        day.entryModels(),
                        m -> m.modelId().equals(id));
                count(hangs, "flight", "flights", day.flights(), f -> id.equals(f.modelId()));
                count(hangs, "attempt", "attempts", day.attempts(), a -> id.equals(a.modelId()));
                count(
                        hangs,
                        "note",
                        "notes",
                        day.more().notes(),
                        n -> n.modelId().equals(id));
            }
            case BATCHES ->
                count(hangs, "motor", "motors", day.motors(), m -> m.batchId().equals(id));
            case MOTORS -> {
                count(
                        hangs,
                        "entry",
                        "entries",
                        day.more().entryMotors(),
                        m -> m.motorId().equals(id));
                count(
                        hangs,
                        "flight",
                        "flights",
                        day.flights(),
                        f -> f.motorId().equals(id));
                count(hangs, "attempt", "attempts", day.attempts(), a -> id.equals(a.motorId()));
                count(
                        hangs,
                        "attempt as a spare",
                        "attempts as a spare",
                        day.more().noted(),
                        n -> id.equals(n.spareMotorId()));
            }
            case ENTRIES -> {
                count(hangs, "window", "windows", day.windows(), w -> id.equals(w.entryId()));
                count(
                        hangs,
                        "attempt",
                        "attempts",
                        day.attempts(),
                        a -> a.entryId().equals(id));
            }
            case CREW ->
                count(
                        hangs,
                        "task in an entry",
                        "tasks in entries",
                        day.more().entryTasks(),
                        t -> new CrewLineId(t.personId(), "").is(id));
            case TERMS, RULES, WINDOWS, STATIONS, NOTES, FLIGHTS -> {}
        }
        return hangs;
    }

    private static <T> void count(List<String> hangs, String one, String several, List<T> all, Predicate<T> hangsOnIt) {
        long count = all.stream().filter(hangsOnIt).count();
        if (count > 0) {
            hangs.add(count + " " + (count == 1 ? one : several));
        }
    }
}
