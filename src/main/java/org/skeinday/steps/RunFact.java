package org.skeinday.steps;

import org.jspecify.annotations.Nullable;

/** What happened in one walk through a list. Facts come in any order; each is kept, none is changed. */
public sealed interface RunFact permits Ticked, ReadAloud, Skipped, TakenBack, Corrected, Reopened {
    String id();

    String runId();

    /** By the server's clock, epoch ms. */
    long atMs();

    @Nullable
    String personId();

    String device();

    /** The item that it is about; empty when it is about the whole list or another fact. */
    default String stepId() {
        return "";
    }

    /** In the order in which it happened; what happened at one moment, by id, so that every device sees one order. */
    static int inOrder(RunFact a, RunFact b) {
        int byTime = Long.compare(a.atMs(), b.atMs());
        return byTime != 0 ? byTime : a.id().compareTo(b.id());
    }

    /** Whether the same person goes on; without names, the same device. */
    default boolean isBy(@Nullable String person, String onDevice) {
        String mine = personId();
        return mine == null || person == null
                ? mine == null && person == null && device().equals(onDevice)
                : mine.equals(person);
    }
}
