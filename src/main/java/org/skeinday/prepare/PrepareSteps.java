package org.skeinday.prepare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.skeinday.exchange.Day;

/** What a coach does first, and then, until a day can be flown. */
public final class PrepareSteps {
    /**
     * One step.
     *
     * @param thing where it is done
     * @param words what there is already, or what to do
     */
    public record Step(Sheet thing, String title, String words, boolean done) {}

    private PrepareSteps() {}

    /** In order: event, rules beside it, models and entries, motors, crew, winding place. */
    public static List<Step> of(Day day) {
        List<Step> steps = new ArrayList<>();
        step(
                steps,
                Sheet.EVENTS,
                day.events().size(),
                "Name the day, its hall and its rules; a preset fills the rules in.");
        step(
                steps,
                Sheet.TERMS,
                day.more().terms().size(),
                "Say what the event asks beside its rules: help, mass limits, the flight log, the time to protest.");
        step(steps, Sheet.MODELS, day.models().size(), "Add your models, each with its direction and hook distance.");
        step(steps, Sheet.BATCHES, day.batches().size(), "Add the batches of strip that your motors are made of.");
        step(
                steps,
                Sheet.MOTORS,
                day.motors().size(),
                "Add your motors: tag, batch, team, loop and mass are enough to begin.");
        step(steps, Sheet.CREW, day.crew().size(), "Add who helps, and what each is cleared for.");
        step(
                steps,
                Sheet.ENTRIES,
                day.entries().size(),
                "Enter who flies with which models and motors, and who does what.");
        step(steps, Sheet.WINDOWS, day.windows().size(), "Add the windows; a day without windows needs none.");
        step(
                steps,
                Sheet.STATIONS,
                day.more().stations().size(),
                "Set up a winding place: mount and pull test, winder, meter.");
        return List.copyOf(steps);
    }

    /** The next step that is open, after this one first, then from the beginning; empty when all are done. */
    public static Optional<Step> next(Day day, Sheet after) {
        List<Step> steps = of(day);
        int here = steps.stream().map(Step::thing).toList().indexOf(after);
        List<Step> open = steps.stream().filter(step -> !step.done()).toList();
        return open.stream()
                .filter(step -> steps.indexOf(step) > here)
                .findFirst()
                .or(() -> open.stream().findFirst());
    }

    private static void step(List<Step> steps, Sheet thing, int count, String toDo) {
        String words = count == 0 ? toDo : count + (count == 1 ? " is there." : " are there.");
        steps.add(new Step(thing, thing.title(), words, count > 0));
    }
}
