package org.skeinday.paper;

import java.util.List;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;

/**
 * The order of an attempt card, the same on paper and in Key in: whoever copies one never looks for a field.
 *
 * @param name of the form's parameter
 * @param column of attempts.csv that it fills; empty for a watch
 * @param label as the card and the form have it
 */
public record CardOrder(String name, String column, String label) {
    /** What is printed before the attempt and only checked when it is keyed in. */
    public static final List<CardOrder> BEFORE = List.of(
            new CardOrder("attempt", "attempt", "Attempt"),
            new CardOrder("model", "model", "Model"),
            new CardOrder("motor", "motor", "Motor"),
            new CardOrder("spare", "spare", "Spare"));

    private static final int WATCH_PREFIX = "watch-".length();

    /** What is written on it by hand: watches that the rules do not ask for, and what only officials elsewhere announce, are left out. */
    public static List<CardOrder> after(EventAdded event) {
        return AFTER.stream().filter(field -> field.isAsked(event)).toList();
    }

    private boolean isAsked(EventAdded event) {
        if (name.startsWith("watch-")) {
            return Integer.parseInt(name.substring(WATCH_PREFIX)) <= event.timekeepers();
        }
        return !name.equals("announced") || event.dayKind() == DayKind.VISITING;
    }

    /** What is written on any card by hand. */
    public static final List<CardOrder> AFTER = List.of(
            new CardOrder("stop-count", "stop count", "Stop count"),
            new CardOrder("peak-torque", "peak torque", "Peak torque"),
            new CardOrder("back-off", "back off", "Back-off"),
            new CardOrder("launch-torque", "launch torque", "Launch torque"),
            new CardOrder("contacts", "contacts", "Contacts"),
            new CardOrder("watch-1", "", "Watch 1"),
            new CardOrder("watch-2", "", "Watch 2"),
            new CardOrder("watch-3", "", "Watch 3"),
            new CardOrder("announced", "announced", "Announced"),
            new CardOrder("remaining", "remaining", "Remaining"),
            new CardOrder("note", "note", "Note"));
}
