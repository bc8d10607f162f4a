package org.skeinday.review;

import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.NotCounted;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

/** What is shown of a flight, in the order in which a table has it; each empty where it is not known. */
public enum Figure {
    DAY("day", (r, u) -> r.day().toString()),
    EVENT("event", (r, u) -> name(r.flown().event())),
    ENTRY("entry", (r, u) -> name(r.flown().entry())),
    MODEL("model", (r, u) -> name(r.flown().model())),
    MOTOR("motor", (r, u) -> name(r.flown().motor())),
    BATCH("batch", (r, u) -> name(r.flown().batch())),
    WINDER("wound by", (r, u) -> name(r.flown().winder())),
    METER("torque meter", (r, u) -> r.wound().meter()),
    USE(
            "use",
            (r, u) -> r.wound().use() == null ? null : String.valueOf(r.wound().use())),
    FRACTION("of breaking turns", (r, u) -> plain("%.2f", r.wound().fraction(), "")),
    PEAK_TORQUE("peak torque", (r, u) -> torque(r.wound().peakTorqueNmm(), u)),
    LAUNCH_TORQUE("launch torque", (r, u) -> torque(r.flight().launchTorqueNmm(), u)),
    HOLD("hold", (r, u) -> plain("%.0f", r.wound().holdSeconds(), " s")),
    TIME(
            "time",
            (r, u) -> r.flight().timeMs() == null
                    ? null
                    : new FlightTime(r.flight().timeMs()).text(0)),
    SPREAD("watches apart", (r, u) -> plain("%.2f", r.spreadSeconds(), " s")),
    SPEED(
            "mean speed",
            (r, u) -> r.flight()
                    .figures()
                    .map(f -> plain("%.1f", f.turnsPerSecond(), " turns/s"))
                    .orElse(null)),
    REMAINING(
            "turns remaining",
            (r, u) -> r.flight()
                    .figures()
                    .map(f -> plain("%.0f", f.motorTurnsRemaining(), ""))
                    .orElse(null)),
    SHARE_REMAINING(
            "share remaining",
            (r, u) -> r.flight()
                    .figures()
                    .map(f -> plain("%.0f", 100 * f.shareRemaining(), " %"))
                    .orElse(null)),
    VALID("for analysis", (r, u) -> r.flight().counts().words()),
    SOURCE("source", (r, u) -> r.flight().said().marks().cameFrom(r.flight()::number)),
    CONTACT("contact", (r, u) -> {
        var at = r.flight().said().contact();
        return at == null ? null : "after " + new FlightTime(at.toMillis()).text(0);
    }),
    TEMPERATURE("temperature", (r, u) -> plain("%.1f", r.conditions().celsius(), " °C")),
    HUMIDITY("humidity", (r, u) -> plain("%.0f", r.conditions().humidity(), " %")),
    DRIFT("drift", (r, u) -> r.conditions().drift());

    private final String words;
    private final BiFunction<FlightRow, UnitSystem, @Nullable String> text;

    Figure(String words, BiFunction<FlightRow, UnitSystem, @Nullable String> text) {
        this.words = words;
        this.text = text;
    }

    /** As a table's heading has it. */
    public String words() {
        return words;
    }

    /** With its unit, in the reader's, and with a word beside a number that is no evidence; empty where it is not known. */
    public Optional<String> of(FlightRow row, UnitSystem units) {
        return Optional.ofNullable(text.apply(row, units)).map(shown -> shown + beside(row));
    }

    private String beside(FlightRow row) {
        NotCounted because = switch (this) {
            case TIME -> measured(row, Measured.TIME);
            case PEAK_TORQUE -> measured(row, Measured.PEAK_TORQUE);
            case LAUNCH_TORQUE -> measured(row, Measured.LAUNCH_TORQUE);
            case REMAINING -> measured(row, Measured.REMAINING);
            case FRACTION -> measured(row, Measured.CRANK_TURNS);
            default -> null;
        };
        return because == null ? "" : because == NotCounted.OFFERED ? " (offered)" : " (" + because.words() + ")";
    }

    private static @Nullable NotCounted measured(FlightRow row, Measured what) {
        return row.flight().said().measured(what, row.flight().number(what)).because();
    }

    private static @Nullable String name(@Nullable Named thing) {
        return thing == null ? null : thing.name();
    }

    private static @Nullable String torque(@Nullable Double nmm, UnitSystem units) {
        return nmm == null ? null : units.torque(Torque.ofNewtonMillimetres(nmm));
    }

    private static @Nullable String plain(String format, @Nullable Double value, String unit) {
        return value == null ? null : String.format(Locale.ROOT, format, value) + unit;
    }
}
