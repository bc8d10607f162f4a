package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.FlightFigures;
import org.skeinday.attempt.RemainderReading;
import org.skeinday.attempt.SizeAdvice;
import org.skeinday.attempt.action.FlightWorth;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

/** One released attempt: what is still to be told of it, and what it says. */
final class FlightPresenter {
    private final Tx tx;
    private final AttemptNow attempt;
    private final boolean isInTheAir;
    private final UnitSystem units;
    private final AttemptNoted note;
    private final @Nullable Flight flight;

    FlightPresenter(Tx tx, AttemptNow attempt, AttemptPhase.Name phase, UnitSystem units) {
        this.tx = tx;
        this.attempt = attempt;
        this.isInTheAir = phase == AttemptPhase.Name.IN_THE_AIR;
        this.units = units;
        this.note = AttemptStore.note(tx, attempt.id());
        this.flight = FlownStore.find(tx, attempt.id()).orElse(null);
    }

    /** @param unread whether nobody read the needle @param quiet whether nobody may be helped */
    FlightView view(boolean unread, boolean quiet, FormErrors form) {
        Optional<FlightFigures> figures = Optional.ofNullable(flight).flatMap(Flight::figures);
        return new FlightView(
                attempt.id(),
                unread ? unread(form) : null,
                isInTheAir ? null : landing(form, quiet),
                quiet ? List.of() : Apart.made("What this flight came to", () -> lines(figures), FlightPresenter::only),
                quiet
                        ? ""
                        : Apart.made(
                                "What this flight suggests",
                                () -> figures.isPresent() ? suggests() : "",
                                words -> words));
    }

    private static List<BenchView.Line> only(String words) {
        return List.of(new BenchView.Line("figures", words));
    }

    private FlightView.Unread unread(FormErrors form) {
        Double stop = flight == null ? null : flight.stopCrankTurns();
        Double launch = flight == null ? null : flight.launchTorqueNmm();
        return new FlightView.Unread(
                form.typedOr("stop", number(stop)),
                form.typedOr("backOff", number(note.backOffCrankTurns())),
                form.typedOr("peak", torque(note.peakTorqueNmm())),
                form.typedOr("launch", torque(launch)),
                form.typedOr("unit", units.torqueUnitTyped()),
                form.typedOr("unit", units.torqueUnitTyped()).replace('-', '·'),
                stop != null);
    }

    private FlightView.Landing landing(FormErrors form, boolean quiet) {
        FlightEvidence said = flight == null ? FlightEvidence.good() : flight.said();
        String contact = said.counts().reason().isEmpty() || said.contact() == null
                ? ""
                : new FlightTime(said.contact().toMillis()).text(0);
        return new FlightView.Landing(
                form.typedOr("remaining", number(note.remainingCrankTurns())),
                form.typedOr("spoilt", said.counts().reason()),
                form.typedOr("contact", contact),
                note.remainingCrankTurns() != null || said.judged(),
                quiet || !said.counts().isUndecided() ? "" : said.counts().detail(),
                FlightWorth.seen(said));
    }

    private String torque(@Nullable Double nmm) {
        return nmm == null ? "" : units.torque(Torque.ofNewtonMillimetres(nmm));
    }

    /** As people write it: no zeros after the point. */
    static String number(@Nullable Double value) {
        return value == null ? "" : PlainNumber.of(value);
    }

    /** What can be computed, and of the rest for want of what it cannot. */
    private List<BenchView.Line> lines(Optional<FlightFigures> figures) {
        if (isInTheAir || flight == null) {
            return List.of();
        }
        List<BenchView.Line> lines = new ArrayList<>();
        Double launched = flight.launchCrankTurns();
        Double left = flight.remainingCrankTurns();
        if (launched != null && left != null && left <= launched) {
            lines.add(new BenchView.Line("turns used", round((launched - left) * flight.ratio()) + " motor turns"));
        }
        if (left != null) {
            String share = launched == null || launched == 0 ? "" : ", " + round(100 * left / launched) + " %";
            lines.add(new BenchView.Line("turns left", round(left * flight.ratio()) + " motor turns" + share));
        }
        lines.add(new BenchView.Line(
                "mean speed, hook against frame",
                figures.map(FlightPresenter::speed).orElse(wanting(flight))));
        return lines;
    }

    private static String speed(FlightFigures f) {
        return String.format(
                Locale.ROOT,
                "%.1f turns/s, %.0f turns/min over %s",
                f.turnsPerSecond(),
                f.turnsPerMinute(),
                f.time().text(1));
    }

    private static String wanting(Flight flight) {
        List<String> wanting = new ArrayList<>();
        if (flight.stopCrankTurns() == null) {
            wanting.add("the count at the last turn");
        }
        if (flight.backOffCrankTurns() == null) {
            wanting.add("the back-off");
        }
        if (flight.remainingCrankTurns() == null) {
            wanting.add("the turns left");
        }
        if (flight.timeMs() == null) {
            wanting.add("a time");
        }
        return "not known: needs " + String.join(", ", wanting);
    }

    private static long round(double value) {
        return Math.round(value);
    }

    private String suggests() {
        Flight flown = Objects.requireNonNull(flight);
        String own = flown.evidence()
                .flatMap(Flight::figures)
                .map(f -> RemainderReading.of(f, flown.counts(), RemainderReading.MANY_FROM)
                        .words())
                .orElseGet(() -> says(flown.counts()));
        return "This flight: " + own + "."
                + advice(flown).map(a -> " Of this model, " + a.reason() + ".").orElse("");
    }

    /** Why nothing is read out of what is left. */
    private static String says(Counts counts) {
        if (counts.isUndecided()) {
            return "it is undecided: the remainder says nothing until somebody says whether it counts";
        }
        return counts.isYes()
                ? "a number of it is doubted or not confirmed: the remainder says nothing until it is"
                : RemainderReading.SAYS_NOTHING.words();
    }

    private Optional<SizeAdvice> advice(Flight flown) {
        String model = flown.modelId();
        if (model == null || flown.motorId() == null) {
            return Optional.empty();
        }
        Map<String, MotorAdded> motors = MotorStore.all(tx).stream().collect(Collectors.toMap(MotorAdded::id, m -> m));
        List<SizeAdvice.Flown> flights = FlownStore.ofModel(tx, model).stream()
                .flatMap(f -> f.evidence().stream())
                .filter(f -> f.atMs() <= flown.atMs())
                .flatMap(f -> Optional.ofNullable(motors.get(f.motorId())).stream()
                        .flatMap(motor -> f.figures().stream().map(figures -> of(motor, figures))))
                .toList();
        MotorAdded own = motors.get(flown.motorId());
        return own == null
                ? Optional.empty()
                : SizeAdvice.of(flights, RemainderReading.MANY_FROM, Mass.ofGrams(own.massG()));
    }

    private static SizeAdvice.Flown of(MotorAdded motor, FlightFigures figures) {
        return new SizeAdvice.Flown(Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG()), figures);
    }
}
