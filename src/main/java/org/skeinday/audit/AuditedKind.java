package org.skeinday.audit;

import java.util.ArrayList;
import java.util.List;

/**
 * One kind of fact that stands in the audit.
 *
 * @param kind of the fact, for example {@code window.changed}
 * @param words what was done, for people
 * @param thing what it is about, with the id in {@code subject}: facts of one thing and id follow each other
 * @param subject the field with that id
 * @param does what the fact does to what was known of the thing
 * @param fields that are told
 */
public record AuditedKind(
        String kind, AuditTopic topic, String words, Thing thing, String subject, Does does, List<AuditField> fields) {
    /** What may be changed. */
    public enum Thing {
        EVENT,
        CONDITIONS,
        FLIGHT_RULES,
        WINDOW,
        HALL,
        ENTRY,
        PERSON,
        DEVICE,
        LAPTOP,
        ATTEMPT,
        COLLISION,
        ANNOUNCED,
        PROTEST
    }

    /** What a fact does to what was known. */
    public enum Does {
        /** All fields are as it says. */
        SETS,
        /** The thing is there no more. */
        ENDS,
        /** One more of a list that belongs to the thing. */
        ADDS,
        /** It stands for itself, and nothing was before it. */
        SAYS
    }

    public AuditedKind {
        fields = List.copyOf(fields);
    }

    /** Every field of the fact that is kept: those that are told, whose it is, and the reason. */
    public List<String> kept() {
        List<String> names = new ArrayList<>(List.of(subject, REASON, ATTEMPT));
        fields.forEach(field -> names.add(field.name()));
        return names.stream().distinct().toList();
    }

    /** Whether a value says anything. */
    public boolean tells(String field, String text) {
        boolean flag = fields.stream().anyMatch(f -> f.name().equals(field) && f.is() == AuditField.Is.FLAG);
        return !text.isEmpty() && !(flag && text.equals("false"));
    }

    /** Where a fact says why. */
    static final String REASON = "reason";
    /** What belongs to an attempt has it beside its own id. */
    static final String ATTEMPT = "attemptId";
}
