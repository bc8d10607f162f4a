package org.skeinday.audit;

/**
 * A field of a fact that the audit tells.
 *
 * @param name as the record has it
 * @param label for people
 * @param is what its text means
 */
public record AuditField(String name, String label, Is is) {
    /** What the text of a field means. */
    public enum Is {
        TEXT,
        /** Yes, or nothing to tell. */
        FLAG,
        /** A time in ms. */
        TIME,
        /** A moment, ms since 1970. */
        MOMENT,
        /** The id of one. */
        ENTRY,
        MODEL,
        MOTOR,
        PERSON
    }

    /** Said as it stands. */
    static AuditField text(String name, String label) {
        return new AuditField(name, label, Is.TEXT);
    }

    static AuditField time(String name, String label) {
        return new AuditField(name, label, Is.TIME);
    }

    static AuditField moment(String name, String label) {
        return new AuditField(name, label, Is.MOMENT);
    }
}
