package org.skeinday.hall.action;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.Judged;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;

/** What a change of the winding place in use opens again in the day's lists. */
@FunctionalInterface
public interface Reopens {
    /**
     * @param before in use so far, null when none was
     * @param now in use from now on, null when none is
     */
    List<Fact> by(Tx tx, ActContext context, @Nullable Judged before, @Nullable Judged now);
}
