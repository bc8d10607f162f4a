package org.skeinday.review;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Locale;

/**
 * A season: a year from its first day on.
 *
 * @param first its first day
 */
public record Season(LocalDate first) {
    /** When a season begins where nobody says otherwise: with the school year (own default). */
    public static final MonthDay DEFAULT_START = MonthDay.of(9, 1);

    /** The season that holds this day. */
    public static Season of(LocalDate day, MonthDay start) {
        LocalDate first = start.atYear(day.getYear());
        return new Season(first.isAfter(day) ? start.atYear(day.getYear() - 1) : first);
    }

    /** The one that holds this day, begun where nobody says otherwise. */
    public static Season of(LocalDate day) {
        return of(day, DEFAULT_START);
    }

    public LocalDate last() {
        return first.plusYears(1).minusDays(1);
    }

    /** For example 2026/27, or 2026 for one that begins with the year. */
    public String words() {
        return first.getYear() == last().getYear()
                ? String.valueOf(first.getYear())
                : String.format(Locale.ROOT, "%d/%02d", first.getYear(), last().getYear() % 100);
    }
}
