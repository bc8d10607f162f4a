package org.skeinday.steps;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Small lists and taps that read like prose. */
final class ListFixture {
    static final Pauses PAUSES = Pauses.usual(Duration.ofSeconds(10));
    static final long S = 1000;
    static final long MIN = 60 * S;

    private ListFixture() {}

    static Step ok(String id, boolean critical) {
        return new Step(id, "Do " + id, "Because of " + id, critical, ItemAnswer.OK);
    }

    static Step value(String id, boolean critical, ItemAnswer answer) {
        return new Step(id, "Say " + id, "Because of " + id, critical, answer);
    }

    static Checklist list(Moment moment, boolean aloud, Step... steps) {
        return new Checklist("l1", 1, "A list", moment, Way.DO_THEN_CONFIRM, aloud, "Next: fly.", List.of(steps));
    }

    /** Two critical items, two that are not; the last asks for a count. */
    static Checklist landing() {
        return list(
                Moment.AFTER_LANDING,
                false,
                ok("held", true),
                ok("motor", true),
                ok("look", false),
                value("count", false, ItemAnswer.COUNT));
    }

    static Run run(Checklist list, RunFact... facts) {
        return Run.of(list, List.of(facts), PAUSES);
    }

    static Ticked tick(String id, String step, long at) {
        return tick(id, step, null, at, "ines");
    }

    static Ticked tick(String id, String step, @Nullable String answer, long at, @Nullable String person) {
        return new Ticked(id, "r", step, answer, 1, at, person, "tablet-" + person);
    }

    static Skipped skip(String id, String step, long at) {
        return new Skipped(id, "r", step, "no time", 1, at, "ines", "tablet-ines");
    }

    static TakenBack back(String id, String about, long at) {
        return new TakenBack(id, "r", about, at, "ines", "tablet-ines");
    }

    static Corrected correct(String id, String about, String step, boolean done, @Nullable String answer, long at) {
        return new Corrected(id, "r", about, step, done, answer, "misread", at, "tomek", "tablet-tomek");
    }

    static Reopened reopen(String id, String step, long at) {
        return new Reopened(id, "r", step, "the lane was moved", at, "tomek", "tablet-tomek");
    }

    static ReadAloud read(String id, long at) {
        return new ReadAloud(id, "r", 1, at, "ines", "tablet-ines");
    }

    static List<String> ids(List<Step> steps) {
        return new ArrayList<>(steps.stream().map(Step::id).toList());
    }
}
