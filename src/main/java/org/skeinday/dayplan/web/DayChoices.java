package org.skeinday.dayplan.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.skeinday.attempt.Part;
import org.skeinday.dayplan.AttemptAhead;
import org.skeinday.dayplan.Person;
import org.skeinday.dayplan.Scenario;
import org.skeinday.dayplan.Setback;

/** What may be tried on the day, what may be told of it, and what was told and is not over. */
final class DayChoices {
    private static final Map<String, String> OVER =
            Map.of(Setback.AWAY, "Is back", Setback.REPAIR, "Is mended", Setback.RETRIEVAL, "Is down");

    private final DayNow day;
    private final DayWords words;

    DayChoices(DayNow day, DayWords words) {
        this.day = day;
        this.words = words;
    }

    /**
     * Something that may be tried.
     *
     * @param byMinutes whether the words go on with a number of minutes
     */
    record Possible(Scenario.Change change, String words, boolean byMinutes) {
        /** What a form sends for it; it is looked up again, never cut apart. */
        String key() {
            return change.what() + " " + change.which();
        }
    }

    /** Something that may be told. @param who a person's id, or an entry's */
    record Tellable(String kind, String who, String words) {
        String key() {
            return kind + " " + who;
        }
    }

    /** What a change may be tried on. */
    List<Possible> toTry() {
        List<Possible> choices = new ArrayList<>();
        TreeSet<String> entries = new TreeSet<>();
        TreeSet<String> motors = new TreeSet<>();
        for (AttemptAhead attempt : day.day().attempts()) {
            entries.add(attempt.entry());
            motors.addAll(attempt.motors().keySet());
        }
        entries.forEach(e -> choices.add(possible(Scenario.What.WINDOW_MOVES, e, "the window of " + e + " moves by")));
        for (Part part : Part.values()) {
            choices.add(possible(Scenario.What.PART_LONGER, part.word(), part.word() + " takes longer each time, by"));
        }
        for (Person person : day.day().setting().crew()) {
            if (!person.id().equals(SetbacksNow.VENUE)) {
                choices.add(possible(Scenario.What.PERSON_AWAY, person.id(), words.name(person.id()) + " is away"));
            }
        }
        motors.forEach(m -> choices.add(possible(Scenario.What.MOTOR_OUT, m, "motor " + m + " is out")));
        day.day().ids().forEach(id -> choices.add(possible(Scenario.What.ATTEMPT_OUT, id, id + " is left out")));
        return choices;
    }

    private static Possible possible(Scenario.What what, String which, String words) {
        boolean byMinutes = what == Scenario.What.WINDOW_MOVES || what == Scenario.What.PART_LONGER;
        return new Possible(new Scenario.Change(what, which, 0), words, byMinutes);
    }

    List<DayView.Choice> asOptions() {
        return toTry().stream().map(p -> new DayView.Choice(p.key(), p.words())).toList();
    }

    /** What may be told. */
    List<Tellable> toTell() {
        List<Tellable> tellable = new ArrayList<>();
        day.crew().forEach(p -> tellable.add(new Tellable(Setback.AWAY, p, words.name(p) + " is away")));
        day.entryNames().forEach((id, name) -> {
            tellable.add(new Tellable(Setback.REPAIR, id, name + ": the model must be mended"));
            tellable.add(new Tellable(Setback.RETRIEVAL, id, name + ": the model is stuck aloft"));
        });
        return tellable;
    }

    List<DayView.Choice> tellableOptions() {
        return toTell().stream()
                .map(t -> new DayView.Choice(t.key(), t.words()))
                .toList();
    }

    /** What was told and goes on, each with the word that ends it. */
    List<DayView.Going> goingOn() {
        return day.setbacks().stream()
                .map(s -> new DayView.Going(s.id(), inWords(s), OVER.getOrDefault(s.kind(), "")))
                .toList();
    }

    String inWords(Setback one) {
        Integer lasts = one.lastsS();
        String until = lasts == null
                ? " for the rest of the day"
                : ", until " + words.clock(one.fromMs() + (lasts + one.curesS()) * 1000L);
        return switch (one.kind()) {
            case Setback.REPAIR -> day.entryName(one.who()) + ": the model is mended" + until;
            case Setback.RETRIEVAL -> day.entryName(one.who()) + ": the model is stuck aloft" + until;
            default -> words.name(one.who()) + " is away" + until;
        };
    }
}
