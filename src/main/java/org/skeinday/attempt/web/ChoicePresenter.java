package org.skeinday.attempt.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptsLeft;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.FlightTrend;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.Aims;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.BreakEvidence;
import org.skeinday.motor.BreakRisk;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.Resolution;
import org.skeinday.motor.Sample;
import org.skeinday.motor.StraightLine;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.winding.WindingPolicy;
import org.skeinday.winding.WindingRequest;
import org.skeinday.winding.store.BreakEvidenceStore;

/** Makes the choice for the attempts left of one entry from what the record knows; what it does not know, it names. */
final class ChoicePresenter {
    private static final int POINTS = 7;
    private static final int MOST_ROWS = 5;
    /** The first ones by rank: every choice of them is counted out. */
    private static final int MOST_MOTORS = 5;

    private static final BigDecimal STEP = new BigDecimal("0.05");
    private static final BigDecimal MOST = new BigDecimal("0.95");

    private final Tx tx;
    private final Today today;
    private final EntryAdded entry;
    private final MotorUses uses;
    private final ForecastFlights flown;
    /** Motors whose flights show no effect of the fraction. */
    private final TreeSet<String> alike = new TreeSet<>();

    private final List<String> missing = new ArrayList<>();

    ChoicePresenter(Tx tx, Today today, EntryAdded entry) {
        this.tx = tx;
        this.today = today;
        this.entry = entry;
        this.uses = MotorUseStore.all(tx);
        this.flown = new ForecastFlights(tx, uses);
    }

    ChoiceView view() {
        int left = Math.min(today.toCome(entry), AttemptsLeft.MOST_ATTEMPTS);
        List<ModelAdded> models = ModelStore.ofEntry(tx, entry.id());
        var atHand = new MotorsAtHand(tx);
        List<MotorAdded> motors = atHand.free(entry);
        String assigned = NextMotors.of(tx, today, atHand, entry).words();
        if (left == 0 || models.isEmpty() || motors.isEmpty()) {
            missing.add(
                    left == 0
                            ? "No attempt is left to call."
                            : models.isEmpty()
                                    ? "The entry has no model: name one in Prepare."
                                    : "No motor can be flown now: " + WhyNoMotor.words(tx, atHand, entry) + ".");
            return new ChoiceView(title(), assigned, "", List.of(), missing);
        }
        List<AttemptsLeft.Option> options = motors.stream()
                .limit(MOST_MOTORS)
                .flatMap(motor -> options(motor, models.get(0)).stream())
                .toList();
        Map<String, Integer> again = new HashMap<>();
        motors.forEach(motor -> again.put(motor.tag(), usesLeft(motor, left)));
        List<AttemptsLeft.Choice> ranked = AttemptsLeft.ranked(
                today.tally(entry).officialMs(), left, today.scoring().score(), options, again);
        if (!alike.isEmpty()) {
            missing.add(
                    "The flights show no effect of the fraction on the time yet, so the gentlest winding comes first: "
                            + String.join(", ", alike) + ".");
        }
        return new ChoiceView(
                title(),
                assigned,
                left + (left == 1 ? " attempt" : " attempts") + " ahead; score: "
                        + PageWords.score(today).toLowerCase(Locale.ROOT) + "; a motor that breaks brings no time",
                apart(ranked).stream().map(this::row).toList(),
                missing);
    }

    /** How often it may still be wound for an official attempt, at least once: who takes it all the same knows why. */
    private int usesLeft(MotorAdded motor, int attempts) {
        return Math.max(1, Math.min(attempts, WindingPolicy.MOST_USES - uses.of(motor.id())));
    }

    private String title() {
        return entry.name() + ": choice for the attempts left";
    }

    /** This motor at the fraction of its use, a step below and a step above; none where something is not known. */
    private List<AttemptsLeft.Option> options(MotorAdded motor, ModelAdded model) {
        MotorPlan plan = Aims.plan(tx, entry, null, motor, model);
        WindingRequest request = plan.request();
        if (request == null) {
            missing.add(motor.tag() + ": " + plan.why() + ".");
            return List.of();
        }
        BreakEvidence evidence = BreakEvidenceStore.evidence(tx, motor.batchId());
        List<Flight> flights = flown.counted(model, motor);
        List<AttemptsLeft.Option> options = new ArrayList<>();
        for (BigDecimal fraction : List.of(
                request.fraction().subtract(STEP),
                request.fraction(),
                request.fraction().add(STEP).min(MOST))) {
            Optional<AttemptsLeft.Option> option = option(motor, model, request, evidence, flights, fraction);
            if (option.isEmpty()) {
                return List.of(); // said once for this motor
            }
            options.add(option.get());
        }
        return options;
    }

    private Optional<AttemptsLeft.Option> option(
            MotorAdded motor,
            ModelAdded model,
            WindingRequest request,
            BreakEvidence evidence,
            List<Flight> flights,
            BigDecimal fraction) {
        double turns = fraction.multiply(request.breakingTurns()).doubleValue();
        BreakRisk risk =
                evidence.at(BreakingTurns.k(turns, Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG())));
        if (!(risk instanceof BreakRisk.Estimated estimated)) {
            missing.add(
                    motor.tag() + ": the risk of breaking is not known, " + ((BreakRisk.NotKnown) risk).reason() + ".");
            return Optional.empty();
        }
        Optional<List<Double>> likely = likely(motor, model, flights, fraction.doubleValue());
        return likely.map(seconds -> new AttemptsLeft.Option(
                motor.tag(),
                fraction.stripTrailingZeros().toPlainString(),
                seconds.stream().map(s -> Math.max(0, Math.round(s * 1000))).toList(),
                estimated.probability()));
    }

    /** By the line through time against fraction where the flights show one, else by their mean. */
    private Optional<List<Double>> likely(MotorAdded motor, ModelAdded model, List<Flight> flights, double fraction) {
        if (flights.size() < FlightForecast.FEWEST_FLIGHTS) {
            missing.add(motor.tag() + ": a forecast needs " + FlightForecast.FEWEST_FLIGHTS + " valid flights of "
                    + model.name() + " with its batch, so far " + flights.size() + ".");
            return Optional.empty();
        }
        double[] seconds = flights.stream().mapToDouble(f -> millis(f) / 1000.0).toArray();
        List<FlightTrend.Point> points =
                flights.stream().flatMap(f -> point(f).stream()).toList();
        if (FlightTrend.of(points, ForecastFlights.CONFIDENCE) instanceof FlightTrend.Shown) {
            StraightLine line = StraightLine.through(
                            points.stream()
                                    .mapToDouble(FlightTrend.Point::measured)
                                    .toArray(),
                            points.stream()
                                    .mapToDouble(p -> p.time().millis() / 1000.0)
                                    .toArray())
                    .readIn(Resolution.EXACT, Resolution.ofDigits(seconds));
            return Optional.of(line.likely(fraction, POINTS));
        }
        alike.add(motor.tag());
        return Optional.of(
                Sample.of(seconds).readIn(Resolution.ofDigits(seconds)).likely(POINTS));
    }

    /** Wound to which fraction of its own motor's breaking turns, as the stop count says it of the choice. */
    private Optional<FlightTrend.Point> point(Flight flight) {
        Double stop = flight.stopCrankTurns();
        return stop == null
                ? Optional.empty()
                : flown.breakingTurns(flight)
                        .map(breaking -> new FlightTrend.Point(
                                stop * flight.ratio() / breaking, new FlightTime(millis(flight))));
    }

    private static long millis(Flight flight) {
        Long ms = flight.timeMs();
        return ms == null ? 0 : ms;
    }

    /** For each set of motors the best choice of fractions; with one set alone, the best few. */
    private static List<AttemptsLeft.Choice> apart(List<AttemptsLeft.Choice> ranked) {
        Map<String, AttemptsLeft.Choice> best = new LinkedHashMap<>();
        ranked.forEach(c -> best.putIfAbsent(
                c.options().stream().map(AttemptsLeft.Option::motorId).sorted().collect(Collectors.joining(" ")), c));
        if (best.size() > 1) {
            return best.values().stream().limit(MOST_ROWS).toList();
        }
        Map<Long, AttemptsLeft.Choice> scores = new LinkedHashMap<>();
        ranked.forEach(c -> scores.putIfAbsent(Math.round(c.expectedMs() / 100), c)); // as it is shown
        return scores.values().stream().limit(MOST_ROWS).toList();
    }

    private ChoiceView.Row row(AttemptsLeft.Choice choice) {
        List<String> flights = choice.options().stream()
                .map(o -> o.motorId() + " at " + o.fraction() + " of its breaking turns, about "
                        + new FlightTime(Math.round(o.expectedSeconds()) * 1000).text(0))
                .toList();
        return new ChoiceView.Row(
                flights,
                new FlightTime(today.scoring().shownMs(Math.round(choice.expectedMs())) / 100 * 100).text(1),
                risks(choice));
    }

    private static String risks(AttemptsLeft.Choice choice) {
        TreeSet<String> risks = new TreeSet<>();
        choice.options()
                .forEach(o -> risks.add(
                        o.motorId() + " at " + o.fraction() + " breaks in " + PlanForecast.percent(o.risk())));
        return "no score at all: " + PlanForecast.percent(choice.noScore()) + "; " + String.join(", ", risks);
    }
}
