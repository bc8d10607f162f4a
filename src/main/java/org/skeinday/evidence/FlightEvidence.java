package org.skeinday.evidence;

import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a flight is worth as evidence: as a whole, and each of its values.
 *
 * @param judged whether a person has said that it does not count, or that it does whatever it touched
 * @param counts as a whole
 * @param touched what it touched, as marks or cards have it; empty when it touched nothing
 * @param contacts how many of them are known, 0 or more
 * @param contact from release to the contact, null when there was none or nobody saw when
 * @param doubted what is unlikely or impossible
 */
public record FlightEvidence(
        boolean judged,
        Counts counts,
        String touched,
        int contacts,
        @Nullable Duration contact,
        ValueMarks marks,
        List<Doubted> doubted) {
    public FlightEvidence {
        doubted = List.copyOf(doubted);
        if (contact != null && contact.isNegative()) {
            throw new IllegalArgumentException("A contact must lie after the release, but was " + contact);
        }
    }

    /** Where nothing is told of what it touched beyond what {@code counts} says. */
    public FlightEvidence(
            boolean judged, Counts counts, @Nullable Duration contact, ValueMarks marks, List<Doubted> doubted) {
        this(
                judged,
                counts,
                counts.isUndecided() ? counts.detail() : "",
                counts.isUndecided() ? 1 : 0,
                contact,
                marks,
                doubted);
    }

    /** Nothing speaks against it. */
    public static FlightEvidence good() {
        return of(Counts.yes());
    }

    public static FlightEvidence of(Counts counts) {
        return new FlightEvidence(false, counts, null, ValueMarks.NONE, List.of());
    }

    /** The same with marks of its values. */
    public FlightEvidence marked(ValueMarks of) {
        return new FlightEvidence(judged, counts, touched, contacts, contact, of, doubted);
    }

    /** The same with its unlikely values. */
    public FlightEvidence doubting(List<Doubted> of) {
        return new FlightEvidence(judged, counts, touched, contacts, contact, marks, of);
    }

    /** Whether this number may enter a fit. @param number in the record's own unit */
    public Counts counts(Measured what, @Nullable Double number) {
        return counts.isYes() ? measured(what, number) : counts;
    }

    /** What speaks against this number alone, whether the flight counts or not. */
    public Counts measured(Measured what, @Nullable Double number) {
        String doubt = doubted.stream()
                .filter(d -> number != null && d.concerns(what))
                .map(Doubted::words)
                .findFirst()
                .orElse("");
        return WhatCounts.value(what, number, marks, doubt);
    }
}
