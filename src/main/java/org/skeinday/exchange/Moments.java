package org.skeinday.exchange;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Misread;

/**
 * Moments as files have them, in the laptop's zone: {@code 2026-05-09 10:00}, with seconds where there are any, and with
 * the offset in the hour that comes twice when clocks are put back.
 *
 * @param shift moves every day and moment that is read; the clock on the wall moves, not the instant
 */
record Moments(ZoneId zone, Duration shift) {
    private static final Pattern TYPED = Pattern.compile(
            "(\\d{4}-\\d{2}-\\d{2})[ T](\\d{1,2}):(\\d{2})(?::(\\d{2})(?:[.,](\\d{1,3}))?)?\\s?([+-]\\d{2}:\\d{2}|Z)?");
    private static final Pattern POINTS = Pattern.compile("(\\d{1,2})\\.(\\d{1,2})\\.(\\d{4})(| .*)");
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");
    private static final DateTimeFormatter MILLISECOND = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss.SSS");

    /** A day moves with its morning, so that it stays the day of its windows. */
    private static final LocalTime MORNING = LocalTime.of(10, 0);

    /** Milliseconds since 1970 UTC; null for an empty cell. */
    @Nullable
    Long read(Row row, String column) {
        return row.read(column, this::ms);
    }

    /** {@code 9.5.2026} is the ninth of May wherever days are written with points; with strokes nobody can tell. */
    static String withIsoDay(String text) {
        Matcher parts = POINTS.matcher(text);
        return parts.matches()
                ? String.format(
                        "%s-%02d-%02d%s",
                        parts.group(3),
                        Integer.parseInt(parts.group(2)),
                        Integer.parseInt(parts.group(1)),
                        parts.group(4))
                : text;
    }

    private long ms(String text) {
        Matcher parts = TYPED.matcher(withIsoDay(text));
        if (!parts.matches()) {
            throw new Misread(
                    "'" + text + "' is no moment", "write year-month-day hour:minute, for example 2026-05-09 10:00");
        }
        LocalDateTime local = local(text, parts);
        if (parts.group(6) != null) {
            return local.plus(shift).toInstant(ZoneOffset.of(parts.group(6))).toEpochMilli();
        }
        int offsets = zone.getRules().getValidOffsets(local).size();
        if (offsets != 1) {
            throw offsets == 0
                    ? new Misread("'" + text + "' does not exist, as clocks are put forward", "write the hour after it")
                    : new Misread(
                            "'" + text + "' comes twice, as clocks are put back",
                            "write which one, for example '" + text
                                    + zone.getRules().getValidOffsets(local).get(0) + "'");
        }
        return local.plus(shift).atZone(zone).toInstant().toEpochMilli();
    }

    private static LocalDateTime local(String text, Matcher parts) {
        try {
            int second = parts.group(4) == null ? 0 : Integer.parseInt(parts.group(4));
            String decimals = parts.group(5) == null ? "" : parts.group(5);
            int ms = Integer.parseInt((decimals + "000").substring(0, 3));
            return LocalDate.parse(parts.group(1))
                    .atTime(Integer.parseInt(parts.group(2)), Integer.parseInt(parts.group(3)), second, ms * 1_000_000);
        } catch (DateTimeException e) {
            throw new Misread(
                    "'" + text + "' is not on the calendar or the clock", "write for example 2026-05-09 10:00");
        }
    }

    LocalDate moved(LocalDate day) {
        return day.atTime(MORNING).plus(shift).toLocalDate();
    }

    String text(@Nullable Long ms) {
        if (ms == null) {
            return "";
        }
        var at = Instant.ofEpochMilli(ms).atZone(zone);
        String text = (ms % 60_000 == 0 ? MINUTE : MILLISECOND).format(at);
        boolean twice = zone.getRules().getValidOffsets(at.toLocalDateTime()).size() > 1;
        return twice ? text + at.getOffset() : text;
    }
}
