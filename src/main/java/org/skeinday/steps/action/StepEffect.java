package org.skeinday.steps.action;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.steps.Step;

/** What an item's value says elsewhere: turns remaining are noted of the flight, a wrong direction is refused. */
@FunctionalInterface
public interface StepEffect {
    /**
     * @param subject what the list is about, an attempt for example
     * @param insist doubts that were asked about and are so, as a refusal named them; null where none were
     * @return refused with the reason, or facts that are taken together with the tick; empty when it says nothing
     */
    Optional<Decision> elsewhere(
            Tx tx, ActContext context, String subject, Step step, String answer, @Nullable String insist);
}
