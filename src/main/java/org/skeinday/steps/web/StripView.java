package org.skeinday.steps.web;

import java.util.List;

/** The phases of an attempt in a row, in words. @param steps in order */
public record StripView(List<Step> steps) {
    public static final StripView NONE = new StripView(List.of());

    /** @param look classes of its shape: done, now, now stopped, later */
    public record Step(String words, String look) {
        public boolean isNow() {
            return look.startsWith("now");
        }
    }

    public StripView {
        steps = List.copyOf(steps);
    }
}
