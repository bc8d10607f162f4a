package org.skeinday.platform.folder;

import ch.qos.logback.classic.spi.ILoggingEvent;
import java.util.regex.Pattern;

/**
 * What is logged, in one line. Our own sentences name what they are about and quote nobody; those of a library may quote a
 * request as it came, so that only who spoke is kept, and where an error came from.
 */
final class LogWords {
    private static final String OWN = "org.skeinday";
    private static final Pattern LINE_ENDS = Pattern.compile("\\p{Cc}+");

    private LogWords() {}

    static String of(ILoggingEvent event) {
        return event.getLoggerName().startsWith(OWN)
                ? LINE_ENDS.matcher(event.getFormattedMessage()).replaceAll(" ")
                : "(what it says is left out, since it may quote what somebody sent)";
    }
}
