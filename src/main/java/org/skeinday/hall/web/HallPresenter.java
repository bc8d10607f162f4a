package org.skeinday.hall.web;

import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.AirMeasured;
import org.skeinday.hall.Distance;
import org.skeinday.hall.Drawing;
import org.skeinday.hall.HallDescribed;
import org.skeinday.hall.Judged;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.Separation;
import org.skeinday.hall.Verdict;
import org.skeinday.hall.store.HallStore;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.Length;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.Sentence;
import org.skeinday.units.UnitSystem;

/** Puts the page Hall together for one reader. */
final class HallPresenter {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

    private final Tx tx;
    private final UnitSystem units;
    private final Clock clock;
    private final UnaryOperator<String> nameOf;
    private final MotorsOfDay motors;
    private final FormErrors form;

    HallPresenter(
            Tx tx, UnitSystem units, Clock clock, UnaryOperator<String> nameOf, MotorsOfDay motors, FormErrors form) {
        this.tx = tx;
        this.units = units;
        this.clock = clock;
        this.nameOf = nameOf;
        this.motors = motors;
        this.form = form;
    }

    /** @param wanted id of a place, new, or anything else for the one in use */
    HallView view(String wanted) {
        @Nullable PlaceMeasured inUse = PlaceStore.inUse(tx).orElse(null);
        @Nullable
        PlaceMeasured shown =
                wanted.equals("new") ? null : PlaceStore.find(tx, wanted).orElse(inUse);
        String used = inUse == null ? "" : inUse.id();
        Optional<HallDescribed> hall = shown == null ? Optional.empty() : HallStore.find(tx, shown.hall());
        return new HallView(
                PlaceStore.all(tx).stream()
                        .map(p -> new HallView.Kept(
                                p.id(),
                                p.hall() + ", " + p.lane(),
                                p.id().equals(used),
                                shown != null && p.id().equals(shown.id())))
                        .toList(),
                shown == null ? null : seen(shown, hall),
                PlaceForm.of(shown, form, units),
                "/hall/part" + (shown == null ? "?place=new" : "?place=" + shown.id()),
                shown == null ? null : described(shown.hall(), hall),
                form);
    }

    private HallView.Seen seen(PlaceMeasured measured, Optional<HallDescribed> hall) {
        Separation least = hall.map(HallDescribed::separation).orElseGet(Separation::usual);
        Optional<Length> stretch = motors.longestStretch(tx);
        Verdict verdict = new Judged(measured, least).verdict(stretch.orElse(null));
        return new HallView.Seen(
                measured.hall() + ", " + measured.lane(),
                lead(verdict),
                verdict.isClear(),
                verdict.findings().stream()
                        .map(f -> new HallView.Wrong(f.text(units), f.rule().reason()))
                        .toList(),
                verdict.unknown().stream().map(u -> Sentence.begin(u) + ".").toList(),
                beside(hall, stretch),
                airNow(measured.hall()),
                Apart.made("The drawing", () -> Drawing.of(measured.place(), least, verdict, units), words -> null));
    }

    private static String lead(Verdict verdict) {
        if (verdict.isClear()) {
            return verdict.isComplete() ? "Nothing is too close." : "Nothing that was measured is too close.";
        }
        int wrong = verdict.findings().size();
        return wrong + (wrong == 1 ? " thing is" : " things are") + " not right.";
    }

    /** What else the hall and today's motors say. */
    private List<String> beside(Optional<HallDescribed> hall, Optional<Length> stretch) {
        List<String> lines = new ArrayList<>();
        stretch.ifPresent(s -> lines.add("Longest stretch of today's motors: " + units.length(s) + "."));
        motors.pull(tx).ifPresent(lines::add);
        hall.ifPresent(found -> {
            found.clearHeight()
                    .ifPresent(height -> lines.add("Free height: " + units.room(height)
                            + found.lowest().map(o -> ", under " + o.name()).orElse(", to the ceiling") + "."));
            if (!found.lessThanUsual().isEmpty()) {
                lines.add("Less than usual is kept here. " + String.join(". ", found.lessThanUsual()) + ".");
            }
            if (!found.note().isEmpty()) {
                lines.add(found.note());
            }
        });
        return lines;
    }

    private HallView.@Nullable AirNow airNow(String hall) {
        List<AirMeasured> today = new ArrayList<>(HallStore.air(tx, startOfToday(), clock.millis()));
        today.removeIf(a -> !a.hall().equals(hall));
        Collections.reverse(today);
        if (today.isEmpty()) {
            return null;
        }
        return new HallView.AirNow(
                today.get(0).coldWords(motors.testedAt(tx)).orElse(""),
                today.stream().map(this::measured).toList());
    }

    private HallView.Measured measured(AirMeasured a) {
        String by = a.personId() == null ? "" : " · " + nameOf.apply(a.personId());
        return new HallView.Measured(
                a.id(),
                (a.celsius() == null ? "" : PlainNumber.of(a.celsius()) + " °C")
                        + (a.celsius() == null || a.humidity() == null ? "" : ", ")
                        + (a.humidity() == null ? "" : PlainNumber.of(a.humidity()) + " % humidity"),
                CLOCK.format(java.time.Instant.ofEpochMilli(a.atMs()).atZone(clock.getZone())) + by);
    }

    private long startOfToday() {
        return LocalDate.now(clock).atStartOfDay(clock.getZone()).toInstant().toEpochMilli();
    }

    private HallView.Described described(String hall, Optional<HallDescribed> found) {
        String obstructions = found.map(h -> String.join(
                        "\n",
                        h.obstructions().stream()
                                .map(o -> o.name() + ": " + o.heightTyped())
                                .toList()))
                .orElse("");
        return new HallView.Described(
                hall,
                form.typedOr("ceiling", found.map(HallDescribed::ceilingTyped).orElse("")),
                form.typedOr("obstructions", obstructions),
                form.typedOr("note", found.map(HallDescribed::note).orElse("")),
                List.of(Distance.values()).stream().map(d -> distance(d, found)).toList(),
                form.typed("celsius"),
                form.typed("humidity"));
    }

    private HallView.Set distance(Distance distance, Optional<HallDescribed> found) {
        String kept = found.stream()
                .flatMap(h -> h.distances().stream())
                .filter(k -> k.word().equals(distance.word()))
                .map(HallDescribed.Kept::typed)
                .findFirst()
                .orElse("");
        return new HallView.Set(
                distance.word(),
                distance.words(),
                form.typedOr(distance.word(), kept),
                "usually " + units.room(distance.usual()));
    }
}
