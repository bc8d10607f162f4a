package org.skeinday.platform.record;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads the fields of a form one by one and keeps, for each that is wrong, the words that stand beside it. */
public final class TypedFields {
    private final Map<String, String> wrong = new LinkedHashMap<>();

    /** Null when the reader answers null or refuses. @param reader throws IllegalArgumentException with words */
    public <T> @Nullable T read(String field, @Nullable String typed, Function<String, @Nullable T> reader) {
        try {
            return reader.apply(typed == null ? "" : typed.strip());
        } catch (IllegalArgumentException e) {
            wrong(field, String.valueOf(e.getMessage()));
            return null;
        }
    }

    /** The first words for a field stay. */
    public void wrong(String field, String words) {
        wrong.putIfAbsent(field, words);
    }

    /** Empty when nothing was wrong. */
    public Optional<Decision> refused() {
        return wrong.isEmpty()
                ? Optional.empty()
                : Optional.of(new Decision.Refused(String.join(" ", wrong.values()), wrong));
    }
}
