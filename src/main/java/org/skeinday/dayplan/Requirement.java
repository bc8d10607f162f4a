package org.skeinday.dayplan;

/** Something that a plan must keep, by which a conflict is named. */
public record Requirement(Kind kind, String id) {
    /** What a requirement is about. */
    public enum Kind {
        /** A task is done, inside its window and where it is fixed. */
        TASK,
        /** A hard lag. */
        LAG,
        /** The capacity of a resource. */
        RESOURCE,
        /** Those who are cleared for something do one task at a time. */
        CLEARANCE,
        /** A motor is taken by one task at a time, and rests. */
        MOTORS
    }

    /** Whether it is something that tasks hold. */
    boolean isHolder() {
        return kind == Kind.RESOURCE || kind == Kind.CLEARANCE || kind == Kind.MOTORS;
    }
}
