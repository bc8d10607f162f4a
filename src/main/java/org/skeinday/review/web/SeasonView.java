package org.skeinday.review.web;

import java.util.List;
import org.skeinday.platform.http.FormErrors;

/**
 * A new season before it is begun.
 *
 * @param first day of it, {@code months} from how many a batch has aged: as typed
 * @param shown whether {@code words} say what would change
 * @param words one sentence for each change
 */
public record SeasonView(
        String first,
        String months,
        List<Person> people,
        boolean shown,
        List<String> words,
        FormErrors form,
        String problem,
        String saved) {
    public record Person(String id, String name, boolean leaves) {}

    public List<String> leaving() {
        return people.stream().filter(Person::leaves).map(Person::id).toList();
    }
}
