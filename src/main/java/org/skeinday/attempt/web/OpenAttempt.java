package org.skeinday.attempt.web;

import java.util.List;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.web.StripView;

/**
 * An attempt that is called and not over, for pages that are about the whole day.
 *
 * @param title entry and attempt
 */
public record OpenAttempt(String id, String title, StripView strip) {
    /** Of the event at hand, the most urgent first; none where there is no event. */
    public static List<OpenAttempt> read(Tx tx, long nowMs) {
        return Today.read(tx, nowMs).stream()
                .flatMap(today -> of(today).stream())
                .toList();
    }

    static List<OpenAttempt> of(Today today) {
        return today.open().stream()
                .map(a -> new OpenAttempt(
                        a.id(),
                        today.entry(a.entryId()).name() + ", " + a.number().words(),
                        Strips.of(today.live(a.id()))))
                .toList();
    }
}
