package org.skeinday.load;

import java.io.IOException;

/**
 * Gives the servers one core and the load program another, so that neither is measured while it waits for the other. A
 * virtual machine is bound after its start: it has set itself up for all cores, as on a laptop.
 */
final class Cores {
    private static final String SERVERS = "0";
    private static final String LOAD = "1";

    private Cores() {}

    /** Binds this program. @return what the figures were taken on, in words */
    static String bindLoad() throws IOException, InterruptedException {
        return bind(ProcessHandle.current().pid(), LOAD)
                ? "servers bound to core " + SERVERS + ", load to core " + LOAD
                : "servers and load share all cores: there is no taskset, or one core only";
    }

    /** Binds a server that has started. */
    static void bindServer(long pid) throws IOException, InterruptedException {
        bind(pid, SERVERS);
    }

    private static boolean bind(long pid, String core) throws InterruptedException {
        try {
            Process taskset = new ProcessBuilder("taskset", "-a", "-p", "-c", core, String.valueOf(pid))
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return taskset.waitFor() == 0;
        } catch (IOException e) {
            return false; // not on this system
        }
    }
}
