package org.skeinday.dayplan.web;

import java.time.ZoneId;
import java.util.function.UnaryOperator;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.TimeWords;

/** Names, times and durations of a day for people: the plan itself knows people by their ids and times in seconds. */
final class DayWords {
    /** Less is not worth a word. */
    static final long WORTH_SECONDS = 60;

    private static final long MINUTE_S = 60;

    private final DayNow day;
    private final UnaryOperator<String> nameOf;
    private final ZoneId zone;

    /** @param nameOf display name of a person's id */
    DayWords(DayNow day, UnaryOperator<String> nameOf, ZoneId zone) {
        this.day = day;
        this.nameOf = nameOf;
        this.zone = zone;
    }

    static String lasting(long seconds) {
        return seconds < 2 * MINUTE_S ? seconds + " s" : Math.round(seconds / (double) MINUTE_S) + " min";
    }

    /** A moment by the clock on the wall, ms since 1970 UTC. */
    String clock(long ms) {
        return PageWords.clock(ms, zone);
    }

    /** Times in conflicts and ways out. */
    TimeWords times() {
        return new TimeWords(s -> clock(day.ms(s)), DayWords::lasting);
    }

    /** Of a person's id; the venue's people have none. */
    String name(String person) {
        return person.equals(SetbacksNow.VENUE) ? person : nameOf.apply(person);
    }

    /** Who does a task. */
    String people(PlanTaken.Planned task) {
        return String.join(", ", task.who().stream().map(this::name).toList());
    }

    /** A task's name: that of an absence has a person's id in it. */
    String task(String task) {
        return day.crew().stream()
                .filter(person -> task.startsWith(person + " away"))
                .findFirst()
                .map(person -> name(person) + " away")
                .orElse(task);
    }

    /** A line with names in place of ids. */
    String named(String line) {
        String named = line;
        for (String person : day.crew()) {
            named = named.replace(person, name(person));
        }
        return named;
    }
}
