package org.skeinday.timing;

import java.util.List;
import java.util.Optional;

/** Whether the watches agree well enough to be the time that counts. */
public sealed interface TimeDecision {
    /** They do. */
    record Taken(OfficialTime time) implements TimeDecision {}

    /**
     * A person decides: confirms the proposal, leaves a reading out, or asks for a correction.
     *
     * @param proposed what the rule makes of the readings as they are; empty when it makes nothing of them
     * @param reasons one sentence each, naming the watches; at least one
     */
    record ForAPerson(Optional<OfficialTime> proposed, List<String> reasons) implements TimeDecision {
        public ForAPerson {
            reasons = List.copyOf(reasons);
            if (reasons.isEmpty()) {
                throw new IllegalArgumentException("What is put before a person must have a reason, but had none");
            }
        }
    }
}
