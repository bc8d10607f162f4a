package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.skeinday.contest.StationAdded;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.steps.Moment;
import org.skeinday.steps.StepState;
import org.skeinday.steps.store.PlaceLists;
import org.skeinday.steps.store.RunStore;
import org.skeinday.units.UnitSystem;

/** What the hall says to the next attempt: where the air goes, where to release, what of the winding place is asked again. */
public final class HallLines {
    /** Twelve hours of the clock, seen at the mount: up is towards the winder. */
    private static final String ARROWS = "↑↗↗→↘↘↓↙↙←↖↖";

    private HallLines() {}

    /** As {@link #of}; a hall or a place that cannot be read keeps nobody from the card. */
    static List<NowView.Line> apart(Tx tx, String event, Supplier<Optional<StationAdded>> at, UnitSystem units) {
        return Apart.made(
                "What the hall says",
                () -> of(tx, event, at.get(), units),
                words -> List.of(new NowView.Line("hall", words)));
    }

    private static List<NowView.Line> of(Tx tx, String event, Optional<StationAdded> at, UnitSystem units) {
        List<NowView.Line> lines = new ArrayList<>(air(tx, units));
        String subject = PlaceLists.subject(event, at.map(StationAdded::id).orElse(null));
        RunStore.of(tx, Moment.WINDING_PLACE, subject).states().stream()
                .filter(StepState::isOpen)
                .forEach(state -> state.reopened()
                        .ifPresent(r -> lines.add(
                                new NowView.Line("asked again", state.step().text() + ": " + r.reason()))));
        return lines;
    }

    /** Drift and launch spot at the place in use; empty where nobody measured. */
    public static List<NowView.Line> air(Tx tx, UnitSystem units) {
        PlaceMeasured place = PlaceStore.inUse(tx).orElse(null);
        if (place == null) {
            return List.of();
        }
        List<NowView.Line> lines = new ArrayList<>();
        Integer hour = place.driftHour();
        if (hour != null) {
            lines.add(new NowView.Line("air drifts", drift(hour, place.driftMps(), units)));
        }
        place.things().stream()
                .filter(t -> t.kind().equals(PlaceMeasured.LAUNCH))
                .findFirst()
                .ifPresent(t -> lines.add(new NowView.Line("launch spot", spot(t))));
        return lines;
    }

    private static String drift(int hour, @org.jspecify.annotations.Nullable Double mps, UnitSystem units) {
        String speed = mps == null
                ? ""
                : units.isMetric()
                        ? String.format(Locale.ROOT, ", %.2f m/s", mps)
                        : String.format(Locale.ROOT, ", %.1f ft/s", mps / 0.3048);
        return ARROWS.charAt(hour % 12) + " towards " + hour + " o'clock, the winder being 12" + speed;
    }

    private static String spot(PlaceMeasured.Thing t) {
        String beside = t.secondTyped() + " to the " + t.side();
        return switch (t.way()) {
            case BEHIND -> t.firstTyped() + " behind the mount, " + beside;
            case ENDS -> t.firstTyped() + " from the mount, " + t.secondTyped() + " from the winder end, " + t.side();
            case BESIDE -> t.firstTyped() + " from the mount, " + beside;
        };
    }
}
