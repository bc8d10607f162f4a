package org.skeinday.paper.web;

import java.util.List;
import org.skeinday.platform.http.FormErrors;

/**
 * Key in, in finished words.
 *
 * @param saved what the card before came to, empty at first
 * @param asksCatch whether the rules end a flight that is caught, so that a watch may show the catch
 */
public record KeyInView(
        String event,
        String saved,
        String problem,
        FormErrors form,
        boolean asksCatch,
        List<Choice> entries,
        List<String> models,
        List<String> motors,
        List<Field> before,
        List<Field> after) {
    /** An entry. */
    public record Choice(String id, String name, boolean chosen) {}

    /**
     * A field in card order.
     *
     * @param list what it may be completed from: models, motors or nothing
     * @param unit in which a bare number is taken, as files write it; empty where it has none
     */
    public record Field(String name, String label, String value, String message, String list, String unit) {
        /** As it stands under the field. */
        public String shownUnit() {
            return unit.replace('-', '·');
        }
    }
}
