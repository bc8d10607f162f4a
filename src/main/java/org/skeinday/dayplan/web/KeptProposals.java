package org.skeinday.dayplan.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.skeinday.dayplan.action.TakePlan;

/** What was shown, to be taken as it was: after a restart it is asked for again. */
final class KeptProposals {
    private static final int MOST = 20;

    private final Map<String, TakePlan.Take> proposals = new LinkedHashMap<>();

    /** The oldest make room. */
    synchronized void keep(String id, TakePlan.Take proposal) {
        proposals.put(id, proposal);
        while (proposals.size() > MOST) {
            proposals.remove(proposals.keySet().iterator().next());
        }
    }

    /** Empty for one that is too old, or was never shown. */
    synchronized Optional<TakePlan.Take> find(String id) {
        return Optional.ofNullable(proposals.get(id));
    }
}
