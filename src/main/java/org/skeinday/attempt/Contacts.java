package org.skeinday.attempt;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * How often a model touched something on its flight, 0 to 9999, where nothing but the number was told. The record keeps
 * it as a text, since on cards and in files people write of contacts whatever they saw.
 */
public record Contacts(int count) {
    private static final int MOST = 9999;
    private static final String NONE = "none";
    /** Own default: what is seen within this time of each other, two have seen of one contact. */
    private static final long ONE_MS = 2_000;
    /** As people write on a card that there was none. */
    private static final Set<String> NO_CONTACT = Set.of(NONE, "no", "0", "-", "–", "0 contacts");

    private static final Pattern COUNTED = Pattern.compile("(\\d{1,4}) contacts?");

    public Contacts {
        Preconditions.within("The number of contacts", count, 0, MOST);
    }

    /** Whether a text of contacts says that there was one: whatever somebody wrote, but that there was none. */
    public static boolean isContact(@Nullable String text) {
        return text != null
                && !text.isBlank()
                && parse(text.strip()).filter(c -> c.count() == 0).isEmpty();
    }

    /**
     * How many are known of one flight: what was written and what was seen may be the same ones. Whatever somebody wrote
     * without a number is one.
     *
     * @param noted as on the card; null or empty where nothing was
     * @param seenMs when watches marked one or somebody saw it caught, in ms since the release, in any order
     */
    public static int known(@Nullable String noted, List<Long> seenMs) {
        int written = noted == null || !isContact(noted)
                ? 0
                : parse(noted.strip()).map(Contacts::count).orElse(1);
        int seen = 0;
        @Nullable Long last = null;
        for (long ms : seenMs.stream().sorted().toList()) {
            seen += last != null && ms - last <= ONE_MS ? 0 : 1;
            last = ms;
        }
        return Math.max(written, seen);
    }

    /** As the record has them. */
    public String words() {
        return count == 0 ? NONE : count + (count == 1 ? " contact" : " contacts");
    }

    /** Empty for a text that says something else than {@link #words}. */
    public static Optional<Contacts> parse(String text) {
        if (NO_CONTACT.contains(text.toLowerCase(Locale.ROOT))) {
            return Optional.of(new Contacts(0));
        }
        Matcher counted = COUNTED.matcher(text);
        return counted.matches() ? Optional.of(new Contacts(Integer.parseInt(counted.group(1)))) : Optional.empty();
    }
}
