package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One thing to give up, after which there is a plan.
 *
 * @param amounts by how much, the least that will do, by task, lag, resource; of what is left out or cleared: 1
 */
public record WayOut(Kind kind, Map<String, Long> amounts) {
    /** What gives, in the order in which a coach would rather give it up. */
    public enum Kind {
        SOONER_AFTER,
        LATER_AFTER,
        START_EARLIER,
        MORE_OF,
        CLEAR_ONE_MORE,
        END_LATER,
        LEAVE_OUT,
        END_LATER_TOGETHER
    }

    public WayOut {
        amounts = Collections.unmodifiableMap(new LinkedHashMap<>(amounts));
    }

    /** Of all steps or pieces that give. */
    long total() {
        return amounts.values().stream().mapToLong(Long::longValue).sum();
    }

    /** What it asks for, in words. */
    public String words(TimeWords words) {
        List<String> parts = new ArrayList<>();
        amounts.forEach((id, amount) -> parts.add(one(id, amount, words)));
        return String.join("; ", parts);
    }

    private String one(String id, long amount, TimeWords words) {
        String steps = words.lasting(amount);
        return switch (kind) {
            case SOONER_AFTER -> "let the least lag " + id + " be " + steps + " shorter";
            case LATER_AFTER -> "let the most lag " + id + " be " + steps + " longer";
            case START_EARLIER -> "start " + id + " up to " + steps + " earlier";
            case MORE_OF -> amount + " more of " + id;
            case CLEAR_ONE_MORE -> "one more person cleared for " + id;
            case END_LATER, END_LATER_TOGETHER -> "let " + id + " end up to " + steps + " later";
            case LEAVE_OUT -> "leave out " + id;
        };
    }
}
