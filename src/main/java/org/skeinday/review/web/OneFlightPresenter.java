package org.skeinday.review.web;

import java.time.Duration;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.FlightWorth;
import org.skeinday.evidence.NotCounted;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.review.Figure;
import org.skeinday.review.FlightRow;
import org.skeinday.units.FlightTime;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.UnitSystem;

/** One flight as its page shows it. */
final class OneFlightPresenter {
    private final FlightRow row;
    private final ZoneId zone;
    private final UnitSystem units;

    OneFlightPresenter(FlightRow row, ZoneId zone, UnitSystem units) {
        this.row = row;
        this.zone = zone;
        this.units = units;
    }

    OneFlightView view(FormErrors form, String problem, boolean saved, String changed) {
        boolean attempt = row.flight().isAttempt();
        @Nullable Double remaining = row.flight().remainingCrankTurns();
        @Nullable Duration contact = row.flight().said().contact();
        return new OneFlightView(
                row.id(),
                "Flight of " + FlightTable.label(row, zone),
                attempt,
                row.flight().counts().words(),
                row.counts(),
                row.flight().counts().because() == NotCounted.STEERED,
                figures(),
                form.typedOr("remaining", remaining == null ? "" : PlainNumber.of(remaining)),
                form.typedOr(
                        "spoilt",
                        row.flight().counts().isUndecided()
                                ? row.flight().counts().detail()
                                : row.flight().counts().reason()),
                form.typedOr("contact", contact == null ? "" : new FlightTime(contact.toMillis()).text(2)),
                FlightWorth.seen(row.flight().said()),
                form,
                problem,
                saved,
                changed,
                new OpenQuestions(zone, units).numbers(row.flight()),
                List.of(
                        attempt
                                ? new EveningView.Link("Its record", "/attempt/" + row.id())
                                : new EveningView.Link("Change it", "/prepare/flights/row/" + row.id())));
    }

    private List<OneFlightView.Line> figures() {
        return Arrays.stream(Figure.values())
                .flatMap(f -> f.of(row, units).map(text -> new OneFlightView.Line(f.words(), text)).stream())
                .toList();
    }
}
