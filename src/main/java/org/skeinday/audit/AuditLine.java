package org.skeinday.audit;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One change: who, when, by which device, of what, from what to what, and why.
 *
 * @param n number of its line in the record
 * @param role of that device at that moment; empty for the laptop and for one that has not joined
 * @param subject id of what was changed, a {@code thing}
 * @param attempt id of the attempt that it belongs to; empty for none
 * @param name of the entry or event that was changed, as it was called then; empty for other things
 * @param reason empty where none was said
 */
public record AuditLine(
        long n,
        long atMs,
        String device,
        String role,
        String personId,
        @Nullable String broughtBy,
        AuditTopic topic,
        String words,
        AuditedKind.Thing thing,
        String subject,
        String attempt,
        String name,
        List<Change> changes,
        String reason) {
    /** A field that is another now. @param before, after empty for nothing; several values of one are told apart by a line end */
    public record Change(AuditField field, String before, String after) {}

    public AuditLine {
        changes = List.copyOf(changes);
    }
}
