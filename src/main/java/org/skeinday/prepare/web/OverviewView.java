package org.skeinday.prepare.web;

import java.util.List;

/**
 * Prepare at a glance, in finished words.
 *
 * @param event the day that is next, empty when there is none
 * @param printed what can be printed
 */
public record OverviewView(String event, List<Step> steps, List<Link> more, List<Link> printed) {
    /** One step. @param state done, next or later */
    public record Step(String address, String title, String words, String state) {}

    /** Another page. */
    public record Link(String address, String title, String words) {}
}
