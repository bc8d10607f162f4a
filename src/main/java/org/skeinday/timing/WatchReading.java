package org.skeinday.timing;

import org.skeinday.units.FlightTime;

/** What became of one timekeeper's watch on one flight. None is ever dropped without a word. */
public sealed interface WatchReading {
    /** How people call the watch, for example {@code 1} or the timekeeper's name. */
    String watch();

    /** What the record says of it beside the watches that count. */
    String words();

    /**
     * It counts.
     *
     * @param note what else it saw of the flight, for the record; may be empty
     */
    record Counted(String watch, FlightTime time, String note) implements WatchReading {
        public Counted {
            named("A watch", "a name", watch);
        }

        public Counted(String watch, FlightTime time) {
            this(watch, time, "");
        }

        /** A person's choice, with reason: the reading stays in the record and does not count. */
        public LeftOut leaveOut(String by, String reason) {
            return new LeftOut(watch, time, by, reason);
        }

        @Override
        public String words() {
            return "watch " + watch + ": " + time.text(2);
        }
    }

    /** It has no time: stopped by itself, not started, unreadable. */
    record Failed(String watch, String reason) implements WatchReading {
        public Failed {
            named("A watch", "a name", watch);
            named("A watch that failed", "a reason", reason);
        }

        @Override
        public String words() {
            return "watch " + watch + " failed: " + reason;
        }
    }

    /** It has a time that a person left out. */
    record LeftOut(String watch, FlightTime time, String by, String reason) implements WatchReading {
        public LeftOut {
            named("A watch", "a name", watch);
            named("A reading left out", "the person who chose so", by);
            named("A reading left out", "a reason", reason);
        }

        @Override
        public String words() {
            return "watch " + watch + ", " + time.text(2) + ", left out by " + by + ": " + reason;
        }
    }

    private static void named(String what, String needs, String text) {
        if (text.isBlank()) {
            throw new IllegalArgumentException(what + " must have " + needs + ", but had none");
        }
    }
}
