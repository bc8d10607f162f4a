package org.skeinday.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.skeinday.flight.Hover;
import org.skeinday.flight.RunDown;
import org.skeinday.platform.record.Json;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Torque;

/**
 * What {@code flight} tells.
 *
 * @param atRelease the torque of the motor at the turns
 * @param turns in the motor at release
 */
record FlightWords(Hover hover, RunDown down, Torque atRelease, double turns) {
    String asJson() {
        ObjectNode object = Json.MAPPER.createObjectNode();
        object.put("inducedVelocityMetresPerSecond", hover.inducedVelocityMetresPerSecond());
        object.put("hoverPowerMilliwatts", hover.powerMilliwatts());
        object.put("hoverTorqueMilliNewtonMetres", hover.torque().newtonMillimetres());
        object.put("secondsToDescent", down.secondsToDescent());
        object.put("turnsAtDescent", down.turnsAtDescent());
        object.put("idealSeconds", down.idealSeconds());
        down.shareUsed().ifPresentOrElse(share -> object.put("shareUsed", share), () -> object.putNull("shareUsed"));
        if (!down.hovers()) {
            object.put("reason", tooWeak());
        }
        return object.toString();
    }

    private String tooWeak() {
        return String.format(
                Locale.ROOT,
                "it never hovers: torque at %s turns is %.3f mN·m, less than the %.3f mN·m of hover",
                Typed.number(turns),
                atRelease.newtonMillimetres(),
                hover.torque().newtonMillimetres());
    }

    String asWords() {
        var text = new StringBuilder(String.format(
                Locale.ROOT,
                "induced velocity  %.3f m/s%nhover power       %.2f mW%nhover torque      %.3f mN·m (%.4f in·ozf)%n",
                hover.inducedVelocityMetresPerSecond(),
                hover.powerMilliwatts(),
                hover.torque().newtonMillimetres(),
                hover.torque().inchOunces()));
        text.append(String.format(
                Locale.ROOT,
                "descent begins    after %s, with %.0f of %s motor turns left%n",
                time(down.secondsToDescent()),
                down.turnsAtDescent(),
                Typed.number(turns)));
        if (!down.hovers()) {
            text.append("                  ").append(tooWeak()).append('\n');
        }
        text.append("ideal             ").append(time(down.idealSeconds())).append(", of which used ");
        down.shareUsed()
                .ifPresentOrElse(
                        share -> text.append(String.format(Locale.ROOT, "%.0f %%", 100 * share)),
                        () -> text.append("not known: the turns hold no energy"));
        return text.toString();
    }

    private static String time(double seconds) {
        return String.format(
                Locale.ROOT, "%.1f s (%s)", seconds, new FlightTime(Math.round(seconds * 10) * 100).text(1));
    }
}
