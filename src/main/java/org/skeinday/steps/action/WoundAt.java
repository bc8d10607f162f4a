package org.skeinday.steps.action;

import java.util.List;
import java.util.Optional;
import org.skeinday.platform.db.Tx;

/** Where attempts are wound, which rooms after this one know. */
public interface WoundAt {
    /** What is to be wound, of an own attempt; empty for anything else. */
    Optional<GateAsked.Wind> wind(Tx tx, String attempt);

    /** Own attempts of an event that are called there and not wound yet. @param station empty where none is prepared */
    List<String> called(Tx tx, String event, Optional<String> station);
}
