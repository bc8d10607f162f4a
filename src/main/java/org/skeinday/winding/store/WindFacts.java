package org.skeinday.winding.store;

import static org.skeinday.platform.db.schema.Tables.WINDING_COUNTED;
import static org.skeinday.platform.db.schema.Tables.WINDING_MARK;
import static org.skeinday.platform.db.schema.Tables.WINDING_PACED;
import static org.skeinday.platform.db.schema.Tables.WINDING_PHASE;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;

import java.util.List;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.record.FactKind;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPaced;
import org.skeinday.winding.WindPhase;

/** The winds' kinds of fact. */
public final class WindFacts {
    private WindFacts() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("wind.begun", WindBegun.class, Rows.into(WINDING_WIND)),
                FactKind.of("wind.mark", WindMark.class, Rows.put(WINDING_MARK)),
                FactKind.of("wind.paced", WindPaced.class, Rows.put(WINDING_PACED)),
                FactKind.of("wind.phase", WindPhase.class, Rows.into(WINDING_PHASE)),
                FactKind.of("wind.counted", WindCounted.class, Rows.put(WINDING_COUNTED)));
    }
}
