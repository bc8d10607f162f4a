package org.skeinday.contest;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code model.note}: what was changed to trim a model, or repaired.
 *
 * @param kind trim or repair
 * @param atMs milliseconds since 1970 UTC
 * @param readyAtMs when the glue has cured, null when it may fly at once
 */
public record ModelNote(
        String id,
        String modelId,
        String kind,
        long atMs,
        String note,
        @Nullable Long readyAtMs) {
    public static final List<String> KINDS = List.of("trim", "repair");

    public ModelNote {
        Preconditions.oneOf("The kind of note", kind, KINDS);
        Preconditions.filled("The note", note);
    }
}
