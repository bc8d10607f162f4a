package org.skeinday.platform.http;

import io.javalin.http.Context;
import org.jspecify.annotations.Nullable;

/**
 * Ink on paper or light on dark, as each device is told: halls are too bright or too dim, and a borrowed tablet is
 * rarely set for either.
 */
public enum ScreenLight {
    /** As the device itself is set. */
    DEVICE(""),
    /** Ink on paper, for a bright hall. */
    PAPER("paper"),
    /** Light on dark, for a dim hall. */
    DARK("dark");

    private static final String COOKIE = "light";
    private final String word;

    ScreenLight(String word) {
        this.word = word;
    }

    /** In the page's root element; empty for {@link #DEVICE}. */
    public String word() {
        return word;
    }

    /** What somebody forged or an older program set counts as {@link #DEVICE}. */
    static ScreenLight ofWord(@Nullable String word) {
        for (ScreenLight light : values()) {
            if (light.word.equals(word)) {
                return light;
            }
        }
        return DEVICE;
    }

    static ScreenLight of(Context context) {
        return ofWord(context.cookie(COOKIE));
    }

    /** The switch at the foot of every page. */
    public static void register(Routes routes) {
        routes.ofDevice("/light", Role.SPECTATOR, ScreenLight::change);
    }

    private static void change(Context context) {
        KeptCookie.set(context, COOKIE, ofWord(context.formParam(COOKIE)).word);
        context.header("HX-Refresh", "true");
        context.status(204);
    }
}
