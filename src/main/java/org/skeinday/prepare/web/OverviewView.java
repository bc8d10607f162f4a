package org.skeinday.prepare.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Prepare at a glance, in finished words.
 *
 * @param event the day that is next, empty when there is none
 * @param printed what can be printed
 * @param change what the team wanted to change after the event before; null when it said nothing
 * @param aged a sentence on batches that are to be broken again, empty for none
 */
public record OverviewView(
        String event,
        List<Step> steps,
        List<Link> more,
        List<Link> printed,
        @Nullable Change change,
        String aged) {
    /** Lines that were written after an event. */
    public record Change(String event, List<String> lines) {}

    /** One step. @param state done, next or later */
    public record Step(String address, String title, String words, String state) {}

    /** Another page. */
    public record Link(String address, String title, String words) {}
}
