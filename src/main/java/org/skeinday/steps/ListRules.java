package org.skeinday.steps;

import java.util.ArrayList;
import java.util.List;

/** What a {@link Checklist} does not refuse by itself: rules of the shipped lists, advice for the coach's own. */
public final class ListRules {
    /** Items at one pause, and lists tapped through in one attempt. */
    public static final int GOOD_ITEMS = 4;

    public static final int MOST_LISTS = 3;

    private ListRules() {}

    /** What a coach's own list is warned of; empty when it is good. */
    public static List<String> advice(Checklist list) {
        int items = list.steps().size();
        List<String> advice = new ArrayList<>();
        if (items > GOOD_ITEMS) {
            advice.add("'" + list.title() + "' has " + items + " items: more than " + GOOD_ITEMS
                    + " at one pause are not read to their end.");
        }
        return advice;
    }

    /** What is wrong with lists that are shipped together; empty when nothing is. */
    public static List<String> wrong(List<Checklist> shipped) {
        List<String> wrong = new ArrayList<>();
        shipped.forEach(list -> wrong.addAll(advice(list)));
        for (Moment moment : Moment.values()) {
            if (shipped.stream().filter(l -> l.moment() == moment).count() > 1) {
                wrong.add("There is more than one list at the pause " + moment.word() + ".");
            }
        }
        wrong.addAll(ofAnAttempt(shipped));
        return wrong;
    }

    /** What is said when an attempt has more lists to tap through than anybody does. */
    public static List<String> ofAnAttempt(List<Checklist> lists) {
        long count = lists.stream().filter(l -> l.moment().isOfEachAttempt()).count();
        return count > MOST_LISTS
                ? List.of(
                        "An attempt has " + count + " lists: more than " + MOST_LISTS + " are tapped without reading.")
                : List.of();
    }
}
