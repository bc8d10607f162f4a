package org.skeinday.winding;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.Hold;
import org.skeinday.motor.Resolution;
import org.skeinday.units.BareNumber;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Misread;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * One reading of the meter while a motor is held, as somebody typed it: {@code 0.78 at 0:40}.
 *
 * @param seconds since the last turn, above 0, at most a day
 * @param torqueNmm in N·mm, as typed in {@code typed}
 * @param resolutionNmm the step in which it was read, in N·mm: by its last digit, and no finer than a tenth of the meter's
 *     division
 */
public record HeldRead(double seconds, double torqueNmm, double resolutionNmm, String typed) {
    /** As many as a hold has. */
    public static final int MOST = 20;

    private static final double MOST_SECONDS = 86_400;
    private static final Pattern TYPED = Pattern.compile("(?i)(.+?)\\s+(?:at|after|@)\\s+(\\S.*)");
    private static final Pattern DIGITS = Pattern.compile("\\d*[.,]?\\d+");
    private static final String EXAMPLE = "write torque and time since the last turn, for example 0.78 at 0:40";

    public HeldRead {
        Preconditions.positive("Seconds since the last turn", seconds);
        Preconditions.within("Seconds since the last turn", seconds, 0, MOST_SECONDS);
        Preconditions.positive("Torque in N·mm", torqueNmm);
        Preconditions.zeroOrMore("The step of the reading in N·mm", resolutionNmm);
    }

    /**
     * What was typed, several parted by commas with a space, semicolons or lines.
     *
     * @param unit of torques without one
     * @param divisionNmm of the meter; null while not known
     * @throws Misread naming the reading that is wrong and what would be right
     */
    public static List<HeldRead> parse(String text, String unit, @Nullable Double divisionNmm) {
        List<HeldRead> readings = new ArrayList<>();
        for (String one : parted(text)) {
            readings.add(one(one, unit, divisionNmm));
        }
        if (readings.size() > MOST) {
            throw new Misread("These are " + readings.size() + " readings", "a hold has at most " + MOST);
        }
        return List.copyOf(readings);
    }

    /** What stands between commas with a space, semicolons or lines, as it was typed; what is blank is none. */
    public static List<String> parted(String text) {
        return Arrays.stream(text.split(";|\\R|,\\s+", -1))
                .map(String::strip)
                .filter(one -> !one.isEmpty())
                .toList();
    }

    private static HeldRead one(String typed, String unit, @Nullable Double divisionNmm) {
        Matcher parts = TYPED.matcher(typed);
        if (!parts.matches()) {
            throw new Misread("'" + typed + "' is no reading of a hold", EXAMPLE);
        }
        double nmm = Torque.parse(parts.group(1), unit).newtonMillimetres();
        double seconds = FlightTime.parse(parts.group(2)).millis() / 1000.0;
        if (nmm <= 0 || seconds <= 0) {
            throw new Misread("'" + typed + "' is no reading of a hold", EXAMPLE);
        }
        Resolution meter = divisionNmm == null ? Resolution.EXACT : Resolution.ofMeter(divisionNmm);
        double step =
                new Resolution(lastDigit(parts.group(1), nmm)).orCoarser(meter).step();
        return new HeldRead(seconds, nmm, step, BareNumber.with(parts.group(1), unit) + " at " + parts.group(2));
    }

    /** One in the last digit that was typed, in N·mm. */
    private static double lastDigit(String typed, double nmm) {
        Matcher digits = DIGITS.matcher(typed);
        if (!digits.find()) {
            return 0;
        }
        BigDecimal number = new BigDecimal(digits.group().replace(',', '.'));
        return number.signum() == 0 ? 0 : nmm * number.ulp().doubleValue() / number.doubleValue();
    }

    /** @param after seconds since the last turn that was taken off, above 0 */
    Hold.Reading reading(double after) {
        return new Hold.Reading(after, Torque.ofNewtonMillimetres(torqueNmm), new Resolution(resolutionNmm));
    }
}
