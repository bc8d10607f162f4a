package org.skeinday.platform.record;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a rule answers to an act: refused with a reason, or the facts that it makes. */
public sealed interface Decision {
    /** @param fields message by form field, empty when the reason belongs to the whole act */
    record Refused(String reason, Map<String, String> fields) implements Decision {
        public Refused {
            fields = Map.copyOf(fields);
        }
    }

    /** Somebody else changed it since the form was opened: what changed, in words. */
    record Outdated(String whatChanged) implements Decision {}

    /**
     * @param names person id to display name: kept in people.json, never in the chain
     * @param topics whose pages must look again
     */
    record Decided(List<Fact> facts, Map<String, String> names, Set<String> topics) implements Decision {
        public Decided {
            facts = List.copyOf(facts);
            names = Map.copyOf(names);
            topics = Set.copyOf(topics);
        }
    }

    /** What the act is about does not exist. */
    record Unknown(String reason) implements Decision {}

    static Decision unknown(String reason) {
        return new Unknown(reason);
    }

    static Decision refused(String reason) {
        return new Refused(reason, Map.of());
    }

    static Decision refused(String field, String reason) {
        return new Refused(reason, Map.of(field, reason));
    }

    static Decision decided(Set<String> topics, Fact... facts) {
        return new Decided(List.of(facts), Map.of(), topics);
    }
}
