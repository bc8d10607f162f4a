package org.skeinday.audit.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.audit.AuditField;
import org.skeinday.audit.AuditLine;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Caller;
import org.skeinday.units.FlightTime;

/** What ids, times and moments of the audit are for people. What is not there any more is called as it was. */
final class AuditNames {
    private static final String GONE = "one that was removed";
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss");
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.ENGLISH);
    private static final int SIGNS_OF_DEVICE = 4;

    private final Map<String, String> names = new HashMap<>();
    private final Map<String, String> attempts = new HashMap<>();
    private final UnaryOperator<String> person;
    private final ZoneId zone;

    /** @param person the name of one, by id */
    AuditNames(Tx tx, UnaryOperator<String> person, ZoneId zone) {
        this.person = person;
        this.zone = zone;
        names.putAll(EventStore.all(tx).stream().collect(Collectors.toMap(EventAdded::id, EventAdded::name)));
        names.putAll(EntryStore.all(tx).stream().collect(Collectors.toMap(EntryAdded::id, EntryAdded::name)));
        names.putAll(ModelStore.all(tx).stream().collect(Collectors.toMap(ModelAdded::id, ModelAdded::name)));
        MotorStore.all(tx).forEach(motor -> names.put(motor.id(), motor.tag()));
        Map<String, AttemptNumber> numbers = AttemptNumbers.all(tx);
        AttemptStore.asImported(tx)
                .forEach(a -> attempts.put(
                        a.id(),
                        names.getOrDefault(a.entryId(), GONE) + ", "
                                + numbers.getOrDefault(a.id(), AttemptNumber.plain(a.number()))
                                        .words()));
    }

    /** What was changed. */
    String about(AuditLine line) {
        return switch (line.thing()) {
            case EVENT, CONDITIONS, FLIGHT_RULES, ENTRY ->
                line.name().isEmpty() ? names.getOrDefault(line.subject(), GONE) : line.name();
            case WINDOW -> "Window";
            case HALL -> "Hall";
            case PERSON -> person.apply(line.subject());
            case DEVICE -> device(line.subject(), "");
            case LAPTOP -> "Laptop";
            case ATTEMPT, COLLISION, ANNOUNCED -> attempts.getOrDefault(line.subject(), GONE);
            case PROTEST -> attempts.getOrDefault(line.attempt(), GONE);
        };
    }

    /** Its record; empty where there is none to look at. */
    String path(AuditLine line) {
        return switch (line.thing()) {
            case ATTEMPT, COLLISION, ANNOUNCED ->
                attempts.containsKey(line.subject()) ? "/attempt/" + line.subject() : "";
            case PROTEST -> attempts.containsKey(line.attempt()) ? "/attempt/" + line.attempt() : "";
            default -> "";
        };
    }

    /** Who did it, where. */
    String who(AuditLine line) {
        String device = device(line.device(), line.role());
        String brought = line.broughtBy() == null ? "" : ", brought by " + device(line.broughtBy(), "");
        return Stream.of(line.personId().isEmpty() ? "" : person.apply(line.personId()), device + brought)
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" · "));
    }

    /** The person alone; empty when nobody was chosen. */
    String person(AuditLine line) {
        return line.personId().isEmpty() ? "" : person.apply(line.personId());
    }

    private static String device(String id, String role) {
        if (id.equals(Caller.LAPTOP)) {
            return "laptop";
        }
        String shown = id.substring(0, Math.min(SIGNS_OF_DEVICE, id.length()));
        return (role.isEmpty() ? "device " : role + "'s device ") + shown;
    }

    String moment(long ms) {
        return MOMENT.format(Instant.ofEpochMilli(ms).atZone(zone));
    }

    /** The day, as a heading. */
    String day(long ms) {
        return DAY.format(Instant.ofEpochMilli(ms).atZone(zone));
    }

    /** A value of a field, or several of them. */
    String value(AuditField field, String text) {
        return text.lines().map(one -> one(field, one)).collect(Collectors.joining(", "));
    }

    private String one(AuditField field, String text) {
        return switch (field.is()) {
            case TEXT, FLAG -> text.equals("true") ? "yes" : text.equals("false") ? "no" : text;
            case TIME -> time(Long.parseLong(text));
            case MOMENT -> moment(Long.parseLong(text));
            case PERSON -> person.apply(text);
            case ENTRY, MODEL, MOTOR -> names.getOrDefault(text, GONE);
        };
    }

    private static String time(long ms) {
        int decimals = ms % 1000 == 0 ? 0 : ms % 100 == 0 ? 1 : ms % 10 == 0 ? 2 : 3;
        return new FlightTime(ms).text(decimals).toLowerCase(Locale.ROOT);
    }
}
