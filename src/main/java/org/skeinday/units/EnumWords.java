package org.skeinday.units;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** A constant as the record and files write it: {@code WINDING_PLACE} is {@code winding-place}. */
public final class EnumWords {
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
        for (E constant : type.getEnumConstants()) {
            if (of(constant).equals(word)) {
                return constant;
            }
        }
        Preconditions.oneOf(what, word, of(type));
        throw new AssertionError(word); // one of them would have been found
    }
}
