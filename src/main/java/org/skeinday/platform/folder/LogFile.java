package org.skeinday.platform.folder;

import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.rolling.FixedWindowRollingPolicy;
import ch.qos.logback.core.rolling.RollingFileAppender;
import ch.qos.logback.core.rolling.SizeBasedTriggeringPolicy;
import ch.qos.logback.core.util.Duration;
import ch.qos.logback.core.util.FileSize;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The log in the data folder: the newest file and nine before it, each 4 MB at most, 40 MB in all. */
public final class LogFile implements AutoCloseable {
    static final String FOLDER = "logs";
    static final String NAME = "skeinday.log";
    static final int OLD_FILES = 9;
    public static final long FILE_BYTES = 4L << 20;

    private static final String TIME = "yyyy-MM-dd HH:mm:ss";

    private final ch.qos.logback.classic.Logger root;
    private final RollingFileAppender<ILoggingEvent> appender = new RollingFileAppender<>();

    private LogFile(ch.qos.logback.classic.Logger root) {
        this.root = root;
    }

    /** Begins to write what is logged into the data folder, too. @param fileBytes when another file begins */
    public static LogFile in(Path data, long fileBytes) {
        var root = (ch.qos.logback.classic.Logger) LoggerFactory.getLogger(Logger.ROOT_LOGGER_NAME);
        LogFile log = new LogFile(root);
        log.open(data.resolve(FOLDER).resolve(NAME).toString(), fileBytes);
        root.addAppender(log.appender);
        return log;
    }

    private void open(String file, long fileBytes) {
        LoggerContext context = root.getLoggerContext();
        appender.setContext(context);
        appender.setFile(file);
        FixedWindowRollingPolicy rolling = new FixedWindowRollingPolicy();
        rolling.setContext(context);
        rolling.setParent(appender);
        rolling.setFileNamePattern(file + ".%i");
        rolling.setMinIndex(1);
        rolling.setMaxIndex(OLD_FILES);
        rolling.start();
        SizeBasedTriggeringPolicy<ILoggingEvent> size = new SizeBasedTriggeringPolicy<>();
        size.setContext(context);
        size.setCheckIncrement(Duration.buildByMilliseconds(0)); // with each line: a flood of errors must not outrun it
        size.setMaxFileSize(new FileSize(fileBytes));
        size.start();
        appender.setEncoder(LogSetup.lines(context, TIME));
        appender.setRollingPolicy(rolling);
        appender.setTriggeringPolicy(size);
        appender.start();
    }

    @Override
    public void close() {
        root.detachAppender(appender);
        appender.stop();
    }
}
