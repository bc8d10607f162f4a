package org.skeinday.steps;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.hall.Shortfall;
import org.skeinday.hall.Verdict;
import org.skeinday.units.Sentence;
import org.skeinday.units.UnitSystem;

/**
 * An item of the winding place's list that does not hold any more since the lane, the motor or the layout changed.
 *
 * @param reason what is too close or too short now, in words
 */
public record Reopening(Step step, String reason) {
    /**
     * What a change opens again: distances, the item that is answered by the place's verdict; the lane, the one that is
     * answered by its length. A list without such an item opens its first critical one. Nothing is opened by what was as
     * wrong before.
     *
     * @param list of the winding place
     * @param units of the words
     */
    public static List<Reopening> of(Verdict before, Verdict now, Checklist list, UnitSystem units) {
        Map<Step, List<String>> reasons = new LinkedHashMap<>();
        for (Shortfall finding : now.worseThan(before)) {
            item(list, finding.rule().isAboutLength() ? ItemAnswer.LANE_LENGTH : ItemAnswer.PLACE)
                    .ifPresent(step -> add(reasons, step, finding.text(units)));
        }
        for (String unknown : now.newlyUnknown(before)) {
            item(list, ItemAnswer.PLACE).ifPresent(step -> add(reasons, step, sentence(unknown)));
        }
        return reasons.entrySet().stream()
                .map(e -> new Reopening(e.getKey(), String.join(" ", e.getValue())))
                .toList();
    }

    private static void add(Map<Step, List<String>> reasons, Step step, String reason) {
        reasons.computeIfAbsent(step, s -> new ArrayList<>()).add(reason);
    }

    private static Optional<Step> item(Checklist list, ItemAnswer answer) {
        return list.steps().stream()
                .filter(s -> s.answer() == answer)
                .findFirst()
                .or(() -> list.critical().stream().findFirst());
    }

    private static String sentence(String words) {
        return Sentence.begin(words) + ".";
    }
}
