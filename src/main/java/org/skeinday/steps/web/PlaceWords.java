package org.skeinday.steps.web;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.StationStore;
import org.skeinday.hall.HallDescribed;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.Verdict;
import org.skeinday.hall.store.HallStore;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.platform.db.Tx;
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
    static PlaceWords of(Tx tx, AtHand atHand, UnitSystem units) {
        Optional<String> ratio = StationStore.atWork(tx)
                .map(StationAdded::winderRatio)
                .map(r -> java.math.BigDecimal.valueOf(r).stripTrailingZeros().toPlainString());
        Optional<String> pull = atHand.pull(tx);
        PlaceMeasured place = PlaceStore.inUse(tx).orElse(null);
        if (place == null) {
            return new PlaceWords(
                    true,
                    "by eye",
                    "Judged by eye",
                    List.of("No winding place is measured on the page Hall."),
                    ratio,
                    pull);
        }
        Verdict verdict = HallStore.separation(tx, place.hall())
                .judge(place.place(), atHand.longestStretch(tx).orElse(null));
        List<String> less = HallStore.find(tx, place.hall())
                .map(HallDescribed::lessThanUsual)
                .orElse(List.of());
        List<String> about = verdict.findings().stream()
                .filter(f -> !f.rule().isAboutLength())
                .map(f -> f.text(units))
                .toList();
        return about.isEmpty()
                ? new PlaceWords(
                        true,
                        verdict.isComplete() ? "clear" : "clear as far as measured",
                        verdict.isComplete() ? "Clear by tape" : "Clear as far as measured",
                        Stream.concat(
                                        verdict.unknown().stream()
                                                .map(u -> Character.toUpperCase(u.charAt(0)) + u.substring(1) + "."),
                                        less.stream().map(l -> "Less than usual is kept here. " + l + "."))
                                .toList(),
                        ratio,
                        pull)
                : new PlaceWords(false, about.size() + " too close", "", about, ratio, pull);
    }
}
