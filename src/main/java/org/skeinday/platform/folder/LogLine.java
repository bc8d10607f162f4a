package org.skeinday.platform.folder;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.pattern.TargetLengthBasedClassNameAbbreviator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.StackTraceElementProxy;
import ch.qos.logback.core.LayoutBase;
import ch.qos.logback.core.util.CachingDateFormatter;
import org.jspecify.annotations.Nullable;

/**
 * One line of the log, and under it where an error came from. What errors say of themselves is left out: a database or a
 * parser quotes what somebody typed, which may be a name or a secret. Written without a pattern, since reading one loads a
 * hundred and fifty classes at each start.
 */
final class LogLine extends LayoutBase<ILoggingEvent> {
    private static final int MOST_FRAMES = 30;
    private static final int MOST_CAUSES = 5;
    private static final int NAME_LENGTH = 20;

    private final TargetLengthBasedClassNameAbbreviator shorter =
            new TargetLengthBasedClassNameAbbreviator(NAME_LENGTH);
    private final CachingDateFormatter time;

    /** @param pattern of the moment, as {@link java.time.format.DateTimeFormatter} takes it */
    LogLine(String pattern) {
        this.time = new CachingDateFormatter(pattern);
    }

    @Override
    public String doLayout(ILoggingEvent event) {
        StringBuilder line = new StringBuilder(time.format(event.getTimeStamp()));
        line.append(' ').append(padded(event.getLevel())).append(' ');
        line.append(shorter.abbreviate(event.getLoggerName())).append(' ');
        line.append(LogWords.of(event)).append(System.lineSeparator());
        appendTrace(line, event.getThrowableProxy());
        return line.toString();
    }

    private static String padded(Level level) {
        String word = level.toString();
        return word.length() < 5 ? word + " " : word;
    }

    private static void appendTrace(StringBuilder text, @Nullable IThrowableProxy thrown) {
        @Nullable IThrowableProxy one = thrown;
        for (int cause = 0; one != null && cause < MOST_CAUSES; cause++) {
            text.append(cause == 0 ? "" : "by ").append(one.getClassName()).append('\n');
            StackTraceElementProxy[] frames = one.getStackTraceElementProxyArray();
            for (int i = 0; i < Math.min(frames.length, MOST_FRAMES); i++) {
                text.append("    ").append(frames[i].getSTEAsString()).append('\n');
            }
            one = one.getCause();
        }
    }
}
