package org.skeinday.attempt.web;

import java.util.List;
import org.skeinday.platform.db.Tx;

/** What the plan of the day says beside the next attempt: a later room knows it, and hands it in. */
@FunctionalInterface
public interface PlanBeside {
    /**
     * @param isThere whether a plan was taken
     * @param slipped what it no longer keeps, in words; empty while it holds
     * @param missing that it cannot be shown, as a sentence; empty when it can
     */
    record Said(boolean isThere, List<String> slipped, String missing) {
        public static final Said NOTHING = new Said(false, List.of());

        public Said {
            slipped = List.copyOf(slipped);
        }

        public Said(boolean isThere, List<String> slipped) {
            this(isThere, slipped, "");
        }
    }

    Said at(Tx tx, long nowMs);
}
