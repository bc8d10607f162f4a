package org.skeinday.platform.http;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;

/** What a device keeps for a year: no script can read it, and no other site's page sends it along with a post. */
public final class KeptCookie {
    private static final int YEAR_S = 365 * 24 * 3600;

    private KeptCookie() {}

    public static void set(Context context, String name, String value) {
        Cookie cookie = new Cookie(name, value);
        cookie.setPath("/");
        cookie.setMaxAge(YEAR_S);
        cookie.setHttpOnly(true);
        cookie.setSameSite(SameSite.LAX);
        context.cookie(cookie);
    }
}
