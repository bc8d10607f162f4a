package org.skeinday.paper;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.skeinday.attempt.CardPrinted;

/** In which lines a card on paper differs from the card as it would be printed now. */
public final class CardChanges {
    /** Of these the page says what they were and are: a helper takes the motor by them. */
    private static final Set<String> WITH_VALUES = Set.of("Motor", "Spare");

    private CardChanges() {}

    /** In the order of the card, in lower case; empty while the paper is right. */
    public static List<String> of(List<CardPrinted.Line> printed, List<CardPrinted.Line> now) {
        Map<String, String> was = byLabel(printed);
        Map<String, String> is = byLabel(now);
        Set<String> labels = new LinkedHashSet<>();
        now.forEach(line -> labels.add(line.label()));
        printed.forEach(line -> labels.add(line.label()));
        List<String> changes = new ArrayList<>();
        for (String label : labels) {
            String before = was.getOrDefault(label, "");
            String after = is.getOrDefault(label, "");
            if (!before.equals(after)) {
                changes.add(label.toLowerCase(Locale.ROOT) + values(label, before, after));
            }
        }
        return changes;
    }

    private static Map<String, String> byLabel(List<CardPrinted.Line> lines) {
        Map<String, String> byLabel = new HashMap<>();
        lines.forEach(line -> byLabel.put(line.label(), line.shown()));
        return byLabel;
    }

    private static String values(String label, String before, String after) {
        return WITH_VALUES.contains(label) ? " (" + orNone(before) + " → " + orNone(after) + ")" : "";
    }

    private static String orNone(String value) {
        return value.isEmpty() ? "none" : value;
    }
}
