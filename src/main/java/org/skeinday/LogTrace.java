package org.skeinday;

import ch.qos.logback.classic.pattern.ThrowableHandlingConverter;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.StackTraceElementProxy;
import org.jspecify.annotations.Nullable;

/**
 * Where an error came from, as {@code %where} in a pattern of the log. What errors say of themselves is left out: a database
 * or a parser quotes what somebody typed, which may be a name or a secret.
 */
public final class LogTrace extends ThrowableHandlingConverter {
    private static final int MOST_FRAMES = 30;
    private static final int MOST_CAUSES = 5;

    @Override
    public String convert(ILoggingEvent event) {
        StringBuilder text = new StringBuilder();
        @Nullable IThrowableProxy one = event.getThrowableProxy();
        for (int cause = 0; one != null && cause < MOST_CAUSES; cause++) {
            text.append(cause == 0 ? "" : "by ").append(one.getClassName()).append('\n');
            StackTraceElementProxy[] frames = one.getStackTraceElementProxyArray();
            for (int i = 0; i < Math.min(frames.length, MOST_FRAMES); i++) {
                text.append("    ").append(frames[i].getSTEAsString()).append('\n');
            }
            one = one.getCause();
        }
        return text.toString();
    }
}
