package org.skeinday.audit;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One fact as the audit keeps it.
 *
 * @param n number of its line in the record
 * @param device {@code laptop} for the laptop itself
 * @param personId empty when nobody was chosen
 * @param broughtBy the device that brought it in a file; null where the device sent it itself
 * @param said text by name of the fields that are kept; those without a value are left out
 */
public record AuditRow(
        long n,
        long atMs,
        String device,
        String personId,
        @Nullable String broughtBy,
        AuditedKind kind,
        Map<String, String> said) {
    public AuditRow {
        said = Map.copyOf(said);
    }

    /** What it is about: the thing, and which one. */
    String about() {
        return kind.thing() + " " + subject();
    }

    String subject() {
        return said.getOrDefault(kind.subject(), "");
    }
}
