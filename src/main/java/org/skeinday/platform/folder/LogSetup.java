package org.skeinday.platform.folder;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.Context;
import ch.qos.logback.core.encoder.LayoutWrappingEncoder;
import ch.qos.logback.core.spi.ContextAwareBase;
import org.slf4j.Logger;

/** What is logged on the console, and how; found as a service. There is no file to read for it, as that takes half a second. */
public final class LogSetup extends ContextAwareBase implements Configurator {
    @Override
    public ExecutionStatus configure(LoggerContext context) {
        ConsoleAppender<ILoggingEvent> console = new ConsoleAppender<>();
        console.setContext(context);
        console.setName("err");
        console.setTarget("System.err");
        console.setEncoder(lines(context, "HH:mm:ss"));
        console.start();
        context.getLogger("org.skeinday").setLevel(Level.INFO);
        // It warns of every stream whose page has gone; what fails in a page is logged by our own ErrorPages, a port in
        // use is said by the command.
        context.getLogger("io.javalin.Javalin").setLevel(Level.OFF);
        var root = context.getLogger(Logger.ROOT_LOGGER_NAME);
        root.setLevel(Level.WARN);
        root.addAppender(console);
        return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
    }

    /** What writes lines. @param time the moment's pattern */
    static LayoutWrappingEncoder<ILoggingEvent> lines(Context context, String time) {
        LogLine line = new LogLine(time);
        line.setContext(context);
        line.start();
        LayoutWrappingEncoder<ILoggingEvent> lines = new LayoutWrappingEncoder<>();
        lines.setContext(context);
        lines.setLayout(line);
        lines.start();
        return lines;
    }
}
