package org.skeinday.dayplan;

import org.jspecify.annotations.Nullable;

/** Whom a task needs of the crew: anyone who is cleared for it, or who does it already. */
final class CrewNeeds {
    private final EventSetting setting;

    CrewNeeds(EventSetting setting) {
        this.setting = setting;
    }

    /** A crew that nobody has entered is asked for nobody. */
    Task person(Task task, String clearance) {
        return setting.crew().isEmpty() ? task : task.needingPerson(PersonNeed.anyone(clearance));
    }

    /** Whoever does what runs goes on with it, cleared or not: it is a fact. */
    Task person(Task task, AttemptAhead.@Nullable Begun begun, String clearance) {
        return begun != null && isCrew(begun.who()) ? pinned(task, begun.who()) : person(task, clearance);
    }

    /** Somebody who is not in the crew is nobody that the plan could miss. */
    Task pinned(Task task, @Nullable String who) {
        return who != null && isCrew(who) ? task.needingPerson(PersonNeed.of(who)) : task;
    }

    boolean isCrew(@Nullable String who) {
        return setting.crew().stream().anyMatch(person -> person.id().equals(who));
    }
}
