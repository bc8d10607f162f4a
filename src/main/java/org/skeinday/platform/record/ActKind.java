package org.skeinday.platform.record;

import org.skeinday.platform.db.Tx;

/** A kind of act: its name, the record its content is read into, and the action that asks the pure rule. */
public record ActKind<C>(String kind, Class<C> content, Action<C> action) {
    /** Reads what it needs, asks the rule, answers refused or facts. Writes nothing. */
    @FunctionalInterface
    public interface Action<C> {
        Decision decide(Tx tx, ActContext context, C content);
    }
}
