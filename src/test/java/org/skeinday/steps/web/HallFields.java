package org.skeinday.steps.web;

import java.util.HashMap;
import java.util.Map;

/** The form of a winding place as a browser sends it. */
public final class HallFields {
    private HallFields() {}

    /** @param more fields beside the lane */
    public static Map<String, String> of(String length, Map<String, String> more) {
        Map<String, String> form = new HashMap<>();
        for (int i = 0; i < 4; i++) {
            form.putAll(Map.of(
                    "kind" + i, "stand", "name" + i, "", "how" + i, "beside", "first" + i, "", "second" + i, ""));
            form.putAll(Map.of("side" + i, "left", "blows" + i, ""));
        }
        form.putAll(Map.of("id", "", "hall", "Saltmarsh Hall", "lane", "lane by the door", "length", length));
        form.putAll(Map.of("past", "2 m", "drift", "", "speed", ""));
        form.putAll(more);
        return form;
    }
}
