package org.skeinday.steps.web;

import org.skeinday.steps.Gate;

/**
 * What winding waits for, in words.
 *
 * @param words empty when it waits for nothing
 * @param asksTheAdult whether the supervising adult may answer for some of it
 */
public record GateView(String words, boolean asksTheAdult) {
    /** Where nothing is waited for. */
    public static final GateView OPEN = new GateView("", false);

    public static GateView of(Gate.Verdict verdict) {
        return new GateView(verdict.refused().orElse(""), verdict.asksTheAdult());
    }

    public boolean isOpen() {
        return words.isEmpty();
    }
}
