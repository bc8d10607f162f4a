package org.skeinday.prepare.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A form for one thing, in finished words.
 *
 * @param action where it is posted
 * @param id of the thing that is changed, empty for a new one
 * @param seen the row as it was shown, as JSON; empty for a new one
 * @param saved what was saved just before, in words; empty when nothing was
 * @param problem what is wrong with the whole of it, empty when nothing is
 * @param removable whether it can be taken out
 * @param presets rules to begin with, for a new event
 * @param frozen what a change of frozen rules, or of a window, asks; null where it asks nothing
 * @param insist unlikely numbers that are asked about, empty when none is
 */
public record FormView(
        String title,
        String action,
        String back,
        String id,
        String seen,
        String saved,
        String problem,
        boolean removable,
        List<Field> fields,
        List<Preset> presets,
        String insist,
        @Nullable Frozen frozen) {
    /** The same with what was saved just before. */
    FormView saying(String words) {
        return new FormView(title, action, back, id, seen, words, problem, removable, fields, presets, insist, frozen);
    }

    /**
     * One field.
     *
     * @param name of the form's parameter
     * @param input text, number, date, datetime-local, select or boxes
     * @param message what is wrong, empty when nothing is
     * @param unit in which a bare number is taken, as files write it; empty where it has none
     * @param offered what the form proposes as measured, empty where it proposes nothing
     * @param confirmed whether somebody has said that it is so this time
     */
    public record Field(
            String name,
            String label,
            String hint,
            String input,
            String value,
            String message,
            boolean must,
            int longest,
            List<Option> options,
            String unit,
            String offered,
            boolean confirmed) {
        /** The same with what the form proposes. */
        Field offering(String text, boolean isSo) {
            return new Field(name, label, hint, input, value, message, must, longest, options, unit, text, isSo);
        }

        /** As it stands under the field. */
        public String shownUnit() {
            return (hint.isEmpty() ? "" : " · ") + "without a unit: " + unit.replace('-', '·');
        }

        public boolean isWrong() {
            return !message.isEmpty();
        }
    }

    /**
     * What is asked of who changes something after a flight was official.
     *
     * @param moves what the change moves; empty as long as nothing was typed
     * @param pin whether the coach's PIN is asked for
     */
    public record Frozen(String about, String moves, String why, String wrongWhy, boolean pin, String wrongPin) {}

    /** A choice of a field. */
    public record Option(String value, String words, boolean chosen) {}

    /** Rules to begin with. */
    public record Preset(String address, String name) {}
}
