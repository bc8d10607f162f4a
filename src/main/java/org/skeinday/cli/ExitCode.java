package org.skeinday.cli;

import java.io.IOException;
import org.skeinday.platform.record.AlreadyRunning;
import org.skeinday.platform.record.Damaged;

/** What went wrong, as a number for scripts. */
final class ExitCode {
    static final int PORT = 3;
    static final int DAMAGED = 5;

    private ExitCode() {}

    static int of(Exception e) {
        if (e instanceof AlreadyRunning) {
            return 4;
        }
        if (e instanceof Damaged) {
            return DAMAGED;
        }
        return e instanceof IOException ? 6 : 1;
    }
}
