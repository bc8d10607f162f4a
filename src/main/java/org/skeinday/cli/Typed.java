package org.skeinday.cli;

import java.math.BigDecimal;
import java.util.function.Function;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Quantities typed as options; what is wrong is said with the option's name. */
final class Typed {
    private Typed() {}

    static Length length(CommandSpec spec, String option, String typed) {
        return read(spec, option, typed, Length::parse);
    }

    static Mass mass(CommandSpec spec, String option, String typed) {
        return read(spec, option, typed, Mass::parse);
    }

    private static <T> T read(CommandSpec spec, String option, String typed, Function<String, T> reading) {
        try {
            return reading.apply(typed);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), option + ": " + e.getMessage());
        }
    }

    /** 2300 stays 2300. */
    static String number(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        return (exact.scale() < 0 ? exact.setScale(0) : exact).toPlainString();
    }
}
