package org.skeinday.cli;

import java.math.BigDecimal;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;

/** Numbers typed as options, refused in words of the house. */
final class TypedNumber<N> implements ITypeConverter<N> {
    private final Function<String, N> reading;
    private final String what;

    private TypedNumber(Function<String, N> reading, String what) {
        this.reading = reading;
        this.what = what;
    }

    /** Has all options of this command line and of its commands read numbers so. */
    static void useIn(CommandLine line) {
        var whole = new TypedNumber<Integer>(Integer::valueOf, "a whole number");
        var decimal = new TypedNumber<Double>(Double::valueOf, "a number");
        line.registerConverter(int.class, whole);
        line.registerConverter(Integer.class, whole);
        line.registerConverter(double.class, decimal);
        line.registerConverter(Double.class, decimal);
        line.registerConverter(BigDecimal.class, new TypedNumber<BigDecimal>(BigDecimal::new, "a number"));
    }

    /** @throws Unreadable for what is no such number */
    @Override
    public N convert(String typed) {
        try {
            return reading.apply(typed);
        } catch (NumberFormatException e) {
            throw new Unreadable("'" + typed + "' is not " + what);
        }
    }
}
