package org.skeinday.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.skeinday.exchange.TorqueFile;
import org.skeinday.flight.AirDensity;
import org.skeinday.flight.Hover;
import org.skeinday.flight.Rotors;
import org.skeinday.flight.RunDown;
import org.skeinday.motor.TorqueCurve;
import org.skeinday.motor.TorqueReading;
import org.skeinday.motor.UnwindingCurve;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code flight}: what a model's hover takes, and how long a motor holds it up. */
@Command(
        name = "flight",
        description =
                "Tells what hovering takes of a model (momentum theory), and how long a motor holds it up before the"
                        + " descent begins, from the unwinding readings of such a motor. The basic case: without roof, climb and"
                        + " the time of the descent.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Columns: motor_turns,torque (in-ozf), turns still in the motor; other units by header, for example torque"
                    + " (gf·cm). Where a column phase says wind or unwind, the rows of unwinding are taken.",
            "",
            "Example:",
            "  flight --model-mass 4.1g --motor-mass 1.64g --diameter 355mm --rotors 2 --interference 1.28 --merit 0.45"
                    + " --hover-rate 9 --curve unwinding.csv --turns 2230 --air \"20 C, 1013 hPa\""
        })
final class FlightCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Option(names = "--model-mass", required = true, description = "without the motor, for example 4.1g")
    private String modelMass = "";

    @Option(names = "--motor-mass", required = true, description = "for example 1.64g")
    private String motorMass = "";

    @Option(names = "--diameter", required = true, description = "of each rotor, for example 355mm")
    private String diameter = "";

    @Option(names = "--rotors", required = true, description = "how many; those of a coaxial pair are two")
    private int rotors;

    @Option(
            names = "--interference",
            description = "induced power over that of rotors far apart; 1 when left out, 1.28 to 1.41 for close coaxial"
                    + " pairs")
    private double interference = Rotors.FAR_APART;

    @Option(names = "--merit", required = true, description = "figure of merit: ideal power over that of the shaft")
    private double merit;

    @Option(names = "--hover-rate", required = true, description = "motor turns a second in hover, hook against frame")
    private double hoverRate;

    @Option(names = "--curve", required = true, paramLabel = "FILE.csv", description = "readings while unwinding")
    private Path curve = Path.of("");

    @Option(names = "--turns", required = true, description = "motor turns in the motor at release")
    private double turns;

    @Option(names = "--air", description = "\"20 C, 1013 hPa\"; 15 C and 1013.25 hPa when left out")
    private @Nullable String air;

    @Option(names = "--json", description = "one JSON object")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        Hover hover = hover();
        CsvFile csv = CsvFile.read(spec.commandLine(), curve);
        TorqueFile.Read read = TorqueFile.read(csv.name(), csv.text());
        if (!read.errors().isEmpty()) {
            return CsvFile.say(spec.commandLine(), read.errors());
        }
        UnwindingCurve unwinding = unwinding(csv.name(), read);
        requireWithin(unwinding.curve());
        var told = new FlightWords(
                hover, RunDown.of(unwinding, hover, turns), unwinding.curve().at(turns), turns);
        spec.commandLine().getOut().println(json ? told.asJson() : told.asWords());
        return 0;
    }

    private Hover hover() {
        Mass model = mass("--model-mass", modelMass);
        Mass motor = mass("--motor-mass", motorMass);
        Length across = Typed.length(spec, "--diameter", diameter);
        require(across.millimetres() > 0, "--diameter must be more than zero, but was '" + diameter + "'");
        require(rotors >= 1 && rotors <= 12, "--rotors must be 1 to 12, but was " + rotors);
        require(
                interference >= 1 && interference <= 3,
                "--interference must be 1 (rotors far apart) to 3, but was " + interference);
        require(merit > 0 && merit <= 1, "--merit must be above 0 and at most 1, but was " + merit);
        require(
                hoverRate > 0 && hoverRate <= 1000,
                "--hover-rate must be above 0 and at most 1000 motor turns a second, but was " + hoverRate);
        return Hover.of(
                new Mass(model.grams() + motor.grams()),
                new Rotors(across, rotors, interference, merit),
                density(),
                hoverRate);
    }

    private Mass mass(String option, String typed) {
        Mass mass = Typed.mass(spec, option, typed);
        require(mass.grams() > 0, option + " must be more than zero, but was '" + typed + "'");
        return mass;
    }

    private AirDensity density() {
        try {
            return air == null ? AirDensity.standard() : AirDensity.parse(air);
        } catch (IllegalArgumentException e) {
            throw wrong("--air: " + e.getMessage());
        }
    }

    private UnwindingCurve unwinding(String name, TorqueFile.Read read) {
        List<TorqueReading> rows = read.hasPhases() ? read.unwinding() : read.winding();
        long different =
                rows.stream().mapToDouble(TorqueReading::motorTurns).distinct().count();
        require(
                different >= 2,
                name + ": an unwinding curve needs readings at 2 different turns at least, but there are " + different
                        + (read.hasPhases() ? " with the phase unwind" : ""));
        return UnwindingCurve.of(rows);
    }

    private void requireWithin(TorqueCurve torque) {
        require(
                torque.covers(turns),
                "--turns must lie within the readings, " + Typed.number(torque.firstMotorTurns()) + " to "
                        + Typed.number(torque.lastMotorTurns()) + " motor turns, but was "
                        + (Double.isFinite(turns) ? Typed.number(turns) : turns));
    }

    private void require(boolean holds, String message) {
        if (!holds) {
            throw wrong(message);
        }
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
