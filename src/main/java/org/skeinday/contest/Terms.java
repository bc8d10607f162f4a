package org.skeinday.contest;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.timing.TimeRule;
import org.skeinday.timing.WatchesRule;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code terms.set}: what an event asks beside its rules.
 *
 * @param devices free, stands (at the stands only) or none (none at the table)
 * @param outsideHelp free, or none from call to sign-off
 * @param motorLimitG most that a motor may weigh as inspected, as typed in {@code motorLimitTyped}
 * @param modelLeastG least that a model may weigh without its motor, as typed in {@code modelLeastTyped}
 * @param declaredMotors most motors that an entry may declare, null for any number
 * @param reinspection whether motors are inspected again after the flight
 * @param logFlights flights that the required flight log must show, 0 for no log
 * @param logColumns comma-separated words of {@link #LOG_COLUMNS}, in that order
 * @param sections numbers of the rules' sections as officials cite them
 * @param protestMinutes from the announcement of a time, null when there is no deadline
 * @param spreadMs 0 to 60,000 ms: watches further apart are put before a person; null for the own default
 * @param handInAtMs until when motors are handed in, ms since 1970 UTC; null where they stay with the team
 * @param ifOne person or take, when one watch is left of several; null for person
 */
public record Terms(
        String eventId,
        String devices,
        String outsideHelp,
        @Nullable Double motorLimitG,
        @Nullable String motorLimitTyped,
        @Nullable Double modelLeastG,
        @Nullable String modelLeastTyped,
        @Nullable Integer declaredMotors,
        boolean reinspection,
        int logFlights,
        String logColumns,
        @Nullable String logSignedBy,
        @Nullable String sections,
        @Nullable Integer protestMinutes,
        @Nullable Long spreadMs,
        @Nullable String ifOne,
        @Nullable Long handInAtMs) {
    private static final long MINUTE_MS = 60_000;
    private static final String WHERE_DEVICES = "Devices";
    private static final String WHO_HELPS = "Outside help";
    private static final String ONE_LEFT = "What one watch left of several means";

    /** Where devices are allowed. */
    public enum Devices {
        FREE,
        /** At the stands only. */
        STANDS,
        /** None at the table. */
        NONE
    }

    /** Who may help from the call to the sign-off. */
    public enum OutsideHelp {
        FREE,
        NONE
    }

    public static final List<String> DEVICES = EnumWords.of(Devices.class);
    public static final List<String> OUTSIDE_HELP = EnumWords.of(OutsideHelp.class);
    public static final List<String> IF_ONE = EnumWords.of(WatchesRule.IfOne.class);
    public static final List<String> LOG_COLUMNS =
            List.of("model", "motor", "turns", "torque", "launch", "time", "remaining", "note");

    public Terms {
        Preconditions.oneOf(WHERE_DEVICES, devices, DEVICES);
        Preconditions.oneOf(WHO_HELPS, outsideHelp, OUTSIDE_HELP);
        Preconditions.within("Flights in the log", logFlights, 0, 200);
        for (String column : words(logColumns)) {
            Preconditions.oneOf("A column of the log", column, LOG_COLUMNS);
        }
        if (protestMinutes != null) {
            Preconditions.within("The minutes to protest", protestMinutes, 1, 1440);
        }
        if (spreadMs != null) {
            Preconditions.within("The spread limit in ms", spreadMs, 0, 60_000);
        }
        if (ifOne != null) {
            Preconditions.oneOf(ONE_LEFT, ifOne, IF_ONE);
        }
    }

    /** What holds for an event that says nothing: all free, no limit, no log. */
    public static Terms free(String eventId) {
        return new Terms(
                eventId,
                EnumWords.of(Devices.FREE),
                EnumWords.of(OutsideHelp.FREE),
                null,
                null,
                null,
                null,
                null,
                false,
                0,
                "",
                null,
                null,
                null,
                null,
                null,
                null);
    }

    /** Whether nobody may be helped from the call to the sign-off. */
    public boolean asksForQuiet() {
        return EnumWords.parse(WHO_HELPS, OutsideHelp.class, outsideHelp) == OutsideHelp.NONE;
    }

    public Devices devicesRule() {
        return EnumWords.parse(WHERE_DEVICES, Devices.class, devices);
    }

    /** A person decides where nothing was said. */
    public WatchesRule.IfOne ifOneRule() {
        return ifOne == null ? WatchesRule.IfOne.PERSON : EnumWords.parse(ONE_LEFT, WatchesRule.IfOne.class, ifOne);
    }

    /** When the watches become the time by themselves. Elsewhere officials decide: only the spread is looked at then. */
    public WatchesRule watches(EventAdded event, TimeRule time) {
        boolean visiting = event.dayKind() == DayKind.VISITING;
        return new WatchesRule(
                time,
                visiting ? 1 : event.timekeepers(),
                spreadMs == null ? WatchesRule.SPREAD_MS : spreadMs,
                visiting ? WatchesRule.IfOne.TAKE : ifOneRule());
    }

    /** When the time to protest that began then is over, epoch ms; empty when there is no deadline or it has not begun. */
    public Optional<Long> protestUntil(@Nullable Long fromMs) {
        return protestMinutes == null || fromMs == null
                ? Optional.empty()
                : Optional.of(fromMs + protestMinutes * MINUTE_MS);
    }

    public List<String> columnsOfLog() {
        return words(logColumns);
    }

    private static List<String> words(String list) {
        return list.isEmpty() ? List.of() : List.of(list.split(",", -1));
    }
}
