package org.skeinday.attempt.web;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.attempt.Assigned;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.platform.db.Tx;

/** Who does what of an attempt, in the words of every page. */
public final class WhoDoesWhat {
    private final Map<String, Assigned> byTask;
    private final UnaryOperator<String> nameOf;

    private WhoDoesWhat(Map<String, Assigned> byTask, UnaryOperator<String> nameOf) {
        this.byTask = byTask;
        this.nameOf = nameOf;
    }

    /** @param nameOf display name of a person's id */
    public static WhoDoesWhat of(Tx tx, EntryAdded entry, AttemptNumber number, UnaryOperator<String> nameOf) {
        return new WhoDoesWhat(Assignments.of(tx, entry, number), nameOf);
    }

    /** Who is named, else all who are cleared for it; a dash where nobody is. @param task as {@link Assignments#TASKS} */
    public String who(String task) {
        String names = assigned(task).people().stream().map(nameOf).collect(Collectors.joining(" or "));
        return names.isEmpty() ? "\u2013" : names;
    }

    /** The one who is named; empty where nobody is. */
    public String named(String task) {
        return assigned(task).isNamed() ? who(task) : "";
    }

    private Assigned assigned(String task) {
        return Objects.requireNonNull(byTask.get(task));
    }

    /** Two of them in a line: who stands at the motor, who is beside it. */
    public List<NowView.Line> lines() {
        return List.of(
                new NowView.Line("winds / reads", who("winds") + " / " + who("reads")),
                new NowView.Line("loads / releases", who("loads") + " / " + who("releases")));
    }

    /** Of an attempt that is over: what nothing that comes later changes, which records of before say of hands alone. */
    List<NowView.Line> then() {
        boolean kept = byTask.values().stream().anyMatch(task -> task.source() == Assigned.Source.KEPT);
        return kept
                ? List.of(
                        new NowView.Line("wound / read", named("winds", "reads")),
                        new NowView.Line("loaded / released", named("loads", "releases")))
                : saidByHand();
    }

    /** A dash where nobody was. */
    private String named(String one, String other) {
        return Stream.of(one, other)
                .map(task -> assigned(task).isNamed() ? who(task) : "\u2013")
                .collect(Collectors.joining(" / "));
    }

    private List<NowView.Line> saidByHand() {
        String said = byTask.entrySet().stream()
                .filter(task -> task.getValue().source() == Assigned.Source.BY_HAND)
                .map(task -> task.getKey() + " " + who(task.getKey()))
                .collect(Collectors.joining(", "));
        return said.isEmpty() ? List.of() : List.of(new NowView.Line("named by hand", said));
    }

    /** Whom each task can be given to. */
    List<NowView.Hand> choices(Tx tx, String event) {
        List<CrewAdded> crew = CrewStore.ofEvent(tx, event);
        return Assignments.TASKS.stream()
                .map(task -> new NowView.Hand(
                        task,
                        assigned(task).isNamed() ? assigned(task).people().get(0) : "",
                        crew.stream()
                                .filter(c -> c.does(task))
                                .map(CrewAdded::personId)
                                .distinct()
                                .map(id -> new NowView.Choice(id, nameOf.apply(id)))
                                .toList()))
                .toList();
    }
}
