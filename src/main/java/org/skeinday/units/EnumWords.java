package org.skeinday.units;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A constant as the record and files write it: {@code WINDING_PLACE} is {@code winding-place}. */
public final class EnumWords {
    /** Asked for each row of a table that is read. */
    private static final ClassValue<Map<String, Object>> BY_WORD = new ClassValue<>() {
        @Override
        protected Map<String, Object> computeValue(Class<?> type) {
            return Arrays.stream(type.getEnumConstants())
                    .collect(Collectors.toUnmodifiableMap(c -> of((Enum<?>) c), c -> c));
        }
    };

    private EnumWords() {}

    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** In the order in which they are declared. */
    public static List<String> of(Class<? extends Enum<?>> type) {
        return Arrays.stream(type.getEnumConstants()).map(EnumWords::of).toList();
    }

    /**
     * @param what is asked for, to begin the refusal with
     * @throws IllegalArgumentException for a word that none of them has
     */
    public static <E extends Enum<E>> E parse(String what, Class<E> type, String word) {
        @Nullable Object constant = BY_WORD.get(type).get(word);
        if (constant == null) {
            Preconditions.oneOf(what, word, of(type));
            throw new AssertionError(word); // one of them would have been found
        }
        return type.cast(constant);
    }
}
