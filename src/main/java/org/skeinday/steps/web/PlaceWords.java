package org.skeinday.steps.web;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.HallDescribed;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.Separation;
import org.skeinday.hall.Verdict;
import org.skeinday.hall.store.HallStore;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ItemAnswer;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.Sentence;
import org.skeinday.units.UnitSystem;

/**
 * What the winding place is found to be, as an item of its list asks for it.
 *
 * @param answer that a tick gives
 * @param words on its button
 * @param findings what is too close, and what was not measured
 * @param ratio of the winder at work, as a file has it; empty when it is not known
 * @param pull on the mount today, and what it is tested with; empty when it is not known
 */
record PlaceWords(
        boolean isClear,
        String answer,
        String words,
        List<String> findings,
        Optional<String> ratio,
        Optional<String> pull) {
    /**
     * @param list whose items ask: what none of them asks for is not worked out
     * @param subject what it is about
     */
    static PlaceWords of(Tx tx, AtHand atHand, UnitSystem units, Checklist list, String subject) {
        Optional<String> ratio =
                asks(list, ItemAnswer.RATIO) ? atHand.winderRatio(tx, subject).map(PlainNumber::of) : Optional.empty();
        Optional<String> pull = asks(list, ItemAnswer.NEWTONS) ? atHand.pull(tx) : Optional.empty();
        @Nullable
        PlaceMeasured place =
                asks(list, ItemAnswer.PLACE) ? PlaceStore.inUse(tx).orElse(null) : null;
        return place == null
                ? byEye(ratio, pull)
                : byTape(tx, atHand, units, place).with(ratio, pull);
    }

    private static boolean asks(Checklist list, ItemAnswer answer) {
        return list.steps().stream().anyMatch(s -> s.answer() == answer);
    }

    private static PlaceWords byEye(Optional<String> ratio, Optional<String> pull) {
        return new PlaceWords(
                true,
                "by eye",
                "Judged by eye",
                List.of("No winding place is measured on the page Hall."),
                ratio,
                pull);
    }

    private PlaceWords with(Optional<String> turns, Optional<String> newtons) {
        return new PlaceWords(isClear, answer, words, findings, turns, newtons);
    }

    private static PlaceWords byTape(Tx tx, AtHand atHand, UnitSystem units, PlaceMeasured place) {
        Optional<HallDescribed> hall = HallStore.find(tx, place.hall());
        Verdict verdict = hall.map(HallDescribed::separation)
                .orElseGet(Separation::usual)
                .judge(place.place(), atHand.longestStretch(tx).orElse(null));
        List<String> about = verdict.findings().stream()
                .filter(f -> !f.rule().isAboutLength())
                .map(f -> f.text(units))
                .toList();
        if (!about.isEmpty()) {
            return new PlaceWords(false, about.size() + " too close", "", about, Optional.empty(), Optional.empty());
        }
        Stream<String> unknown = verdict.unknown().stream().map(u -> Sentence.begin(u) + ".");
        Stream<String> less = hall.map(HallDescribed::lessThanUsual).orElse(List.of()).stream()
                .map(l -> "Less than usual is kept here. " + l + ".");
        return new PlaceWords(
                true,
                verdict.isComplete() ? "clear" : "clear as far as measured",
                verdict.isComplete() ? "Clear by tape" : "Clear as far as measured",
                Stream.concat(unknown, less).toList(),
                Optional.empty(),
                Optional.empty());
    }
}
