package org.skeinday.platform.http;

/**
 * Whether a large file can be looked through without taking the memory that everybody lives on: once that is gone, no part
 * of the program can be trusted to go on.
 */
final class SpareMemory {
    /** A table of 180,000 short lines took between 9 and 11 times its bytes (measured); about double that is kept free. */
    private static final int TIMES = 20;

    private static final long MB = 1024L * 1024;

    private SpareMemory() {}

    /**
     * Asks before the file is opened.
     *
     * @param bytes of what was sent, 0 or more
     * @throws Refusal 503 where the program was started with too little memory for it
     */
    static void require(long bytes) {
        long needed = needed(bytes);
        if (needed > spare()) {
            System.gc(); // what earlier work left lying is counted as taken until then
            if (needed > spare()) {
                throw new Refusal(
                        503,
                        "Looking through " + bytes / 1024 + " kB takes about " + needed / MB
                                + " MB of memory, and Skeinday has " + spare() / MB
                                + " MB to spare here. Nothing was taken. Send less at once: split the file, or send its"
                                + " sheets one by one. Or start Skeinday with more memory (java -Xmx512m -jar …).");
            }
        }
    }

    /** @return bytes of memory */
    static long needed(long bytes) {
        return bytes * TIMES;
    }

    private static long spare() {
        Runtime java = Runtime.getRuntime();
        return java.maxMemory() - (java.totalMemory() - java.freeMemory());
    }
}
