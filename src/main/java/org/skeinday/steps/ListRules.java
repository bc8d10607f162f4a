package org.skeinday.steps;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a {@link Checklist} does not refuse by itself: rules of the shipped lists, advice for the coach's own. */
public final class ListRules {
    /** Items at one pause. */
    public static final int GOOD_ITEMS = 4;

    /** Before winding, where each stands in its order and the line last. */
    public static final int GOOD_BEFORE_WINDING = 9;

    /** Lists tapped through in one attempt. */
    public static final int MOST_LISTS = 3;

    private ListRules() {}

    /** What a coach's own list is warned of; empty when it is good. */
    public static List<String> advice(Checklist list) {
        int items = list.steps().size();
        List<String> advice = new ArrayList<>();
        int good = list.moment() == Moment.BEFORE_WINDING ? GOOD_BEFORE_WINDING : GOOD_ITEMS;
        if (items > good) {
            advice.add("'" + list.title() + "' has " + items + " items: more than " + good
                    + " at one pause are not read to their end.");
        }
        return advice;
    }

    /** What a list that is worded anew may not lose; empty when it is good. */
    public static Optional<String> refusesAnew(Checklist next) {
        if (next.moment() != Moment.BEFORE_WINDING) {
            return Optional.empty();
        }
        List<Step> critical = next.critical();
        return critical.get(critical.size() - 1).id().equals(Step.LINE)
                ? Optional.empty()
                : Optional.of("'" + next.title()
                        + "' must ask, as the last critical item, that nobody but the winder is in line");
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
