package org.skeinday.hall.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.Drawing;
import org.skeinday.platform.http.FormErrors;

/**
 * The page Hall in finished words.
 *
 * @param seen the place that is shown as it was judged; null for a new one
 * @param refetch address of what was judged
 * @param described the form of its hall; null for a new place
 */
public record HallView(
        List<Kept> kept,
        @Nullable Seen seen,
        PlaceForm typed,
        String refetch,
        @Nullable Described described,
        FormErrors form) {
    public record Kept(String id, String name, boolean inUse, boolean shown) {}

    /**
     * @param lead the verdict in one sentence
     * @param unknown what could not be judged
     * @param beside longest stretch, pull on the mount, free height, what is noted of the hall
     * @param air null when nobody measured today
     */
    public record Seen(
            String name,
            String lead,
            boolean isClear,
            List<Wrong> wrong,
            List<String> unknown,
            List<String> beside,
            @Nullable AirNow air,
            @Nullable Drawing drawing) {}

    /** @param reason of the rule */
    public record Wrong(String text, String reason) {}

    /** @param cold what to say of a colder hall, else empty @param measured today, the last one first */
    public record AirNow(String cold, List<Measured> measured) {}

    /** @param when time and person */
    public record Measured(String id, String text, String when) {}

    /** The hall's form: what was typed, else what is kept. @param obstructions one a line */
    public record Described(
            String hall,
            String ceiling,
            String obstructions,
            String note,
            List<Set> distances,
            String celsius,
            String humidity) {}

    /** One distance. @param usual in words */
    public record Set(String word, String label, String value, String usual) {}
}
