package org.skeinday.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.skeinday.exchange.TorqueFile;
import org.skeinday.motor.TorqueCurve;
import org.skeinday.motor.TorqueReading;
import org.skeinday.motor.UnwindingCurve;
import org.skeinday.motor.WindingCurve;
import org.skeinday.platform.record.Json;
import org.skeinday.units.Mass;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code curve}: work and energy from readings of a torque meter. */
@Command(
        name = "curve",
        description =
                "Draws a smooth curve through readings of a torque meter that never overshoots (PCHIP): the torque"
                        + " work while winding, torque between the readings, and from rows of unwinding at fixed length the"
                        + " energy.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Columns: motor_turns,torque_inozf; other units by header, for example torque (gf·cm). A column phase says"
                    + " wind or unwind; without it all rows were read while winding.",
            "",
            "Example:",
            "  curve readings.csv --at 1200 --mass 1.7g"
        })
final class CurveCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE.csv", description = "one row for each reading")
    private Path file = Path.of("");

    @Option(
            names = "--at",
            description = "motor turns at which to tell the torque; of winding, or of unwinding when there is no other")
    private @Nullable Double at;

    @Option(names = "--mass", description = "of the rubber, for the specific energy, for example 1.7g")
    private @Nullable String mass;

    @Option(names = "--json", description = "one JSON object")
    private boolean json;

    /** @param winding null without such rows, as {@code unwinding} */
    private record Curves(
            @Nullable WindingCurve winding, @Nullable UnwindingCurve unwinding) {
        /** What {@code --at} asks: never a mixture of both. */
        TorqueCurve asked() {
            return winding != null
                    ? winding.curve()
                    : java.util.Objects.requireNonNull(unwinding).curve();
        }
    }

    @Override
    public Integer call() throws IOException {
        Mass rubber = rubber();
        CsvFile csv = CsvFile.read(spec.commandLine(), file);
        TorqueFile.Read read = TorqueFile.read(csv.name(), csv.text());
        if (!read.errors().isEmpty()) {
            return CsvFile.say(spec.commandLine(), read.errors());
        }
        Curves curves = curves(csv.name(), read);
        ObjectNode object = figures(curves, read.hasPhases(), rubber);
        spec.commandLine().getOut().println(json ? object.toString() : asWords(object, curves, rubber));
        return 0;
    }

    private @Nullable Mass rubber() {
        Mass rubber = mass == null ? null : Typed.mass(spec, "--mass", mass);
        if (rubber != null && rubber.grams() == 0) {
            throw wrong("--mass must be more than zero, but was '" + mass + "'");
        }
        return rubber;
    }

    private Curves curves(String name, TorqueFile.Read read) {
        requireTwo(name, "winding", read.winding(), !read.unwinding().isEmpty());
        requireTwo(name, "unwinding", read.unwinding(), !read.winding().isEmpty());
        return new Curves(
                read.winding().isEmpty() ? null : WindingCurve.of(read.winding()),
                read.unwinding().isEmpty() ? null : UnwindingCurve.of(read.unwinding()));
    }

    private void requireTwo(String name, String phase, List<TorqueReading> readings, boolean mayLack) {
        long turns = readings.stream()
                .mapToDouble(TorqueReading::motorTurns)
                .distinct()
                .count();
        if (turns < 2 && !(mayLack && readings.isEmpty())) {
            throw wrong(name + ": a torque curve needs readings at 2 different turns at least, but of " + phase
                    + " there are " + turns);
        }
    }

    private ObjectNode figures(Curves curves, boolean hasPhases, @Nullable Mass rubber) {
        ObjectNode object = Json.MAPPER.createObjectNode();
        object.put(
                "torqueWorkMillijoules",
                curves.winding() == null ? null : curves.winding().torqueWorkMillijoules());
        if (at != null) {
            object.put("interpolatedNewtonMillimetres", torque(curves.asked(), at));
        }
        if (hasPhases) {
            UnwindingCurve back = curves.unwinding();
            object.put("energyMillijoules", back == null ? null : back.energyMillijoules());
            object.put(
                    "specificEnergyJoulesPerKilogram",
                    back == null || rubber == null ? null : back.specificEnergyJoulesPerKilogram(rubber));
        }
        return object;
    }

    private double torque(TorqueCurve curve, double turns) {
        if (!curve.covers(turns)) {
            throw wrong("--at must lie within the readings, " + Typed.number(curve.firstMotorTurns()) + " to "
                    + Typed.number(curve.lastMotorTurns()) + " motor turns, but was " + turns);
        }
        return curve.at(turns).newtonMillimetres();
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }

    private String asWords(ObjectNode figures, Curves curves, @Nullable Mass rubber) {
        var text = new StringBuilder();
        text.append(line("torque work while winding", figures, "torqueWorkMillijoules", "mJ"));
        if (at != null) {
            String what = curves.winding() == null ? "unwinding, at " : "winding, at ";
            text.append(line(what + Typed.number(at) + " turns", figures, "interpolatedNewtonMillimetres", "N·mm"));
        }
        if (curves.unwinding() == null) {
            return text.append("energy                     not known: it comes from unwinding at fixed length only")
                    .toString();
        }
        text.append(line("energy given back", figures, "energyMillijoules", "mJ"));
        if (rubber == null) {
            return text.append("specific energy            not known: give --mass")
                    .toString();
        }
        return text.append(line("specific energy", figures, "specificEnergyJoulesPerKilogram", "J/kg"))
                .toString()
                .stripTrailing();
    }

    private static String line(String what, ObjectNode figures, String key, String unit) {
        return figures.get(key).isNull()
                ? String.format(Locale.ROOT, "%-26s not known: no such rows%n", what)
                : String.format(
                        Locale.ROOT, "%-26s %.3f %s%n", what, figures.get(key).asDouble(), unit);
    }
}
