package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

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

    private static final int MOST_NAMES = 6;

    public WayOut {
        amounts = Collections.unmodifiableMap(new LinkedHashMap<>(amounts));
    }

    /** Of all steps or pieces that give. */
    long total() {
        return amounts.values().stream().mapToLong(Long::longValue).sum();
    }

    /**
     * What it asks for, in words.
     *
     * @param problem that it is a way out of
     */
    public String words(PlanProblem problem, TimeWords words) {
        if (kind == Kind.LEAVE_OUT) {
            return "leave out " + TimeWords.some(wholes(problem), MOST_NAMES);
        }
        if (kind == Kind.END_LATER_TOGETHER && amounts.size() > MOST_NAMES) {
            long most =
                    amounts.values().stream().mapToLong(Long::longValue).max().orElse(0);
            return "let " + amounts.size() + " windows close later, by up to " + words.lasting(most);
        }
        List<String> parts = new ArrayList<>();
        amounts.forEach((id, amount) -> parts.add(one(problem, id, amount, words)));
        return String.join("; ", parts);
    }

    /** What falls as a whole by the name of the whole. */
    private Set<String> wholes(PlanProblem problem) {
        Map<String, Task> tasks = problem.byId();
        Set<String> wholes = new LinkedHashSet<>();
        amounts.keySet().forEach(id -> {
            Task task = tasks.get(id);
            wholes.add(task == null || task.chain() == null ? id : task.chain());
        });
        return wholes;
    }

    private String one(PlanProblem problem, String id, long amount, TimeWords words) {
        String steps = words.lasting(amount);
        return switch (kind) {
            case SOONER_AFTER -> lag(problem, id, steps + " sooner");
            case LATER_AFTER -> lag(problem, id, "up to " + steps + " later");
            case START_EARLIER -> "start " + id + " up to " + steps + " earlier";
            case MORE_OF -> amount + " more of " + id;
            case CLEAR_ONE_MORE -> "one more person cleared for " + id;
            case END_LATER, END_LATER_TOGETHER -> "let " + id + " end up to " + steps + " later";
            case LEAVE_OUT -> id;
        };
    }

    private static String lag(PlanProblem problem, String id, String how) {
        return problem.lags().stream()
                .filter(lag -> lag.id().equals(id))
                .map(lag -> "let " + lag.to() + " start " + how + " after " + lag.from() + " than asked")
                .findFirst()
                .orElseThrow();
    }
}
