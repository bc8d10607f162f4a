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
 * @param slot of the watch whose reading it is, from 1; 0 for any other
 */
public record CardOrder(String name, String column, String label, int slot) {
    private CardOrder(String name, String column, String label) {
        this(name, column, label, 0);
    }

    /** What is printed before the attempt and only checked when it is keyed in. */
    public static final List<CardOrder> BEFORE = List.of(
            new CardOrder("attempt", "attempt", "Attempt"),
            new CardOrder("model", "model", "Model"),
            new CardOrder("motor", "motor", "Motor"),
            new CardOrder("spare", "spare", "Spare"));

    /** Of the form alone: whether its watches show the landing or the catch. A card says it in its note. */
    public static final String TIMES_AT = "times-at";

    private static CardOrder watch(int slot) {
        return new CardOrder(nameOfWatch(slot), "", "Watch " + slot, slot);
    }

    /** @param slot from 1 */
    public static String nameOfWatch(int slot) {
        return "watch-" + slot;
    }

    /** Whether it is a torque, which has a unit. */
    public boolean isTorque() {
        return column.endsWith("torque");
    }

    /** What is written on it by hand: watches that the rules do not ask for, and what only officials elsewhere announce, are left out. */
    public static List<CardOrder> after(EventAdded event) {
        return AFTER.stream().filter(field -> field.isAsked(event)).toList();
    }

    private boolean isAsked(EventAdded event) {
        if (slot > 0) {
            return slot <= event.timekeepers();
        }
        return !name.equals("announced") || event.dayKind() == DayKind.VISITING;
    }

    /** What is written on any card by hand. */
    public static final List<CardOrder> AFTER = List.of(
            new CardOrder("stop-count", "stop count", "Last turn at"),
            new CardOrder("peak-torque", "peak torque", "Peak torque"),
            new CardOrder("back-off", "back off", "Back-off"),
            new CardOrder("launch-torque", "launch torque", "Launch torque"),
            new CardOrder("contacts", "contacts", "Contacts"),
            watch(1),
            watch(2),
            watch(3),
            new CardOrder("announced", "announced", "Announced"),
            new CardOrder("remaining", "remaining", "Remaining"),
            new CardOrder("note", "note", "Note"));
}
