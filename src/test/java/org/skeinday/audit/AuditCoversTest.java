package org.skeinday.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.skeinday.Catalogue;

/** Every kind of fact stands in the audit, or is named here with why it does not. A new one fails until somebody says. */
class AuditCoversTest {
    /** By why it does not. */
    private static final Map<String, String> NOT_AUDITED = Map.of(
            "the team's own rubber, which no official decides of",
            "batch.added batch.changed batch.removed motor.added motor.changed motor.removed motor.step motor.step.told"
                    + " motor.step.undone motor.wait motor.placed motor.inspected motor.break-mistaken flight.later-uses",
            "a wind, which is evidence of rubber",
            "wind.asked-again wind.begun wind.confirmed wind.counted wind.floor-mark wind.held wind.judged wind.mark wind.motor wind.paced"
                    + " wind.phase wind.reader wind.undone wind.winder attempt.wound attempt.turns-off attempt.run-back"
                    + " attempt.parted attempt.people-safe attempt.aimed",
            "how an attempt goes on, which its own record tells in full",
            "attempt.called attempt.moved attempt.flew-in attempt.acted attempt.hand attempt.hand-kept attempt.motor"
                    + " attempt.station attempt.aloft attempt.verdict quiet.began quiet.ended card.printed",
            "a reading or a mark of a watch: evidence, kept beside every other",
            "attempt.reading watch.left watch.marked watch.taken",
            "what a flight says of model and motor, never of its time",
            "attempt.judged flight.flown flight.changed flight.marked",
            "preparation and the hall",
            "model.added model.changed model.removed model.note note.removed station.added station.changed"
                    + " station.removed place.in-use place.measured place.removed hall.described air.measured air.removed"
                    + " units.chosen",
            "checks, with their own record",
            "run.begun step.ticked step.skipped step.taken-back step.corrected step.reopened list.read-aloud gate.passed"
                    + " caution.met checklist.revised",
            "the plan of the team's own day, and its review",
            "plan.taken day.setback day.setback-over event.change-next-time season.begun",
            "the laptop's clock, which nobody changed here",
            "clock.jumped clock.slept");

    @Test
    void each_kind_of_fact_is_audited_or_it_is_said_why_not() {
        Map<String, String> why = new TreeMap<>();
        NOT_AUDITED.forEach((reason, kinds) -> Arrays.stream(kinds.split(" ")).forEach(kind -> why.put(kind, reason)));
        Set<String> said = new TreeSet<>(why.keySet());
        said.addAll(AuditedKinds.ALL.keySet());
        assertEquals(new TreeSet<>(Catalogue.projection().kinds()), said);
        assertEquals(
                Set.of(),
                why.keySet().stream().filter(AuditedKinds.ALL::containsKey).collect(Collectors.toSet()),
                "is one or the other");
    }
}
