package org.skeinday.hall.web;

import java.util.Optional;
import java.util.OptionalDouble;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;

/** What the winding place asks of today's motors, which rooms after this one know. */
public interface MotorsOfDay {
    /** At full stretch; empty when there is no motor. */
    Optional<Length> longestStretch(Tx tx);

    /** What the strongest of them pulls and what the mount is tested with, in words; empty when it is not known. */
    Optional<String> pull(Tx tx);

    /** Mean temperature of the hall during the break tests of their batches, °C. */
    OptionalDouble testedAt(Tx tx);
}
