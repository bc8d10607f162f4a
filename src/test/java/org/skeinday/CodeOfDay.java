package org.skeinday;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The code that the coach hands out to timekeepers and captains, made on the laptop as the coach makes it. */
public final class CodeOfDay {
    private static final Pattern SHOWN =
            Pattern.compile("for timekeepers and captains</dt><dd class=\"typed-code\">([^<]+)</dd>");

    /** Each is asked for by a form of its own: one that is sent again makes none. */
    private static final AtomicLong NUMBERS = new AtomicLong(7_700);

    private CodeOfDay() {}

    /** Hands out another one; the one before opens nothing any more. */
    public static String handedOut(int port) throws IOException, InterruptedException {
        HttpResponse<String> answer =
                new Visitor(port, "", NUMBERS.incrementAndGet()).form("/codes/today", java.util.Map.of());
        Matcher shown = SHOWN.matcher(answer.body());
        if (answer.statusCode() != 200 || !shown.find()) {
            throw new AssertionError(answer.statusCode() + " " + answer.body());
        }
        return shown.group(1);
    }
}
