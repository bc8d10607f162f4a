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
 */
public record HallView(List<Kept> kept, @Nullable Seen seen, PlaceForm typed, String refetch, FormErrors form) {
    public record Kept(String id, String name, boolean inUse, boolean shown) {}

    /** @param lead the verdict in one sentence @param unknown what could not be judged @param stretch empty when not known */
    public record Seen(
            String name,
            String lead,
            boolean isClear,
            List<Wrong> wrong,
            List<String> unknown,
            String stretch,
            Drawing drawing) {}

    /** @param reason of the rule */
    public record Wrong(String text, String reason) {}
}
