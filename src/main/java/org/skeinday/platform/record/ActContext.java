package org.skeinday.platform.record;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a rule may know beside the content: who, and the server's time. New ids derive from the act's own id.
 *
 * @param zone of the laptop, for its calendar day
 * @param ids hands out the ids of what the act makes
 */
public record ActContext(String actId, Instant now, ZoneId zone, String device, String person, NewIds ids) {
    private static final Pattern NUMBER = Pattern.compile("-\\d+$");

    /** A context whose ids begin anew: each act is decided in one of its own. */
    public ActContext(String actId, Instant now, ZoneId zone, String device, String person) {
        this(actId, now, zone, device, person, new NewIds(actId));
    }

    /** The laptop's calendar day. */
    public LocalDate today() {
        return LocalDate.ofInstant(now, zone);
    }

    /** As facts keep it: null when nobody said who holds the device. */
    public @Nullable String personOrNull() {
        return person.isEmpty() ? null : person;
    }

    /**
     * The id for the one new thing that the act is about: the device that made the act knows it beforehand. Whoever needs
     * it twice keeps it; what another act made is named by {@link #ownIdOf}.
     *
     * @throws IllegalStateException when it was asked for before
     */
    public String ownId() {
        return ids.own();
    }

    /** An id for something else that the act makes; another one each time. */
    public String nextId() {
        return ids.next();
    }

    /** What an act's own thing is called, for an act that is known by its id alone. */
    public static String ownIdOf(String actId) {
        return actId + "-0";
    }

    /** The act that made the thing of this id. */
    public static String actOf(String id) {
        return NUMBER.matcher(id).replaceFirst("");
    }
}
