package org.skeinday.winding.store;

import static org.skeinday.platform.db.schema.Tables.WINDING_CONFIRMED;
import static org.skeinday.platform.db.schema.Tables.WINDING_COUNTED;
import static org.skeinday.platform.db.schema.Tables.WINDING_FLOOR_MARK;
import static org.skeinday.platform.db.schema.Tables.WINDING_HELD;
import static org.skeinday.platform.db.schema.Tables.WINDING_JUDGED;
import static org.skeinday.platform.db.schema.Tables.WINDING_MARK;
import static org.skeinday.platform.db.schema.Tables.WINDING_PACED;
import static org.skeinday.platform.db.schema.Tables.WINDING_PHASE;
import static org.skeinday.platform.db.schema.Tables.WINDING_UNDONE;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;
import static org.skeinday.platform.db.schema.Tables.WINDING_WINDER;

import java.util.List;
import org.jooq.TableField;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.winding.FloorMarkReached;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.WindJudged;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindMotor;
import org.skeinday.winding.WindPaced;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.WindReader;
import org.skeinday.winding.WindUndone;
import org.skeinday.winding.WindWinder;

/** The winds' kinds of fact. */
public final class WindFacts {
    private WindFacts() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("wind.begun", WindBegun.class, Rows.into(WINDING_WIND)),
                FactKind.of("wind.winder", WindWinder.class, Rows.put(WINDING_WINDER)),
                FactKind.of("wind.mark", WindMark.class, Rows.put(WINDING_MARK)),
                FactKind.of("wind.paced", WindPaced.class, Rows.put(WINDING_PACED)),
                FactKind.of("wind.phase", WindPhase.class, Rows.into(WINDING_PHASE)),
                FactKind.of("wind.counted", WindCounted.class, Rows.put(WINDING_COUNTED)),
                FactKind.of("wind.held", WindHeld.class, WindFacts::held),
                FactKind.of("wind.confirmed", WindConfirmed.class, Rows.put(WINDING_CONFIRMED)),
                FactKind.of(
                        "wind.asked-again",
                        WindConfirmed.class,
                        (tx, fact) -> Rows.remove(tx, WINDING_CONFIRMED.MARK_ID, fact.markId())),
                FactKind.of("wind.judged", WindJudged.class, Rows.put(WINDING_JUDGED)),
                FactKind.of("wind.floor-mark", FloorMarkReached.class, Rows.into(WINDING_FLOOR_MARK)),
                FactKind.of("wind.undone", WindUndone.class, WindFacts::undone),
                FactKind.of("wind.motor", WindMotor.class, WindFacts::motor),
                FactKind.of("wind.reader", WindReader.class, WindFacts::reader));
    }

    private static void held(Tx tx, WindHeld fact) {
        Rows.remove(tx, WINDING_HELD.WIND_ID, fact.windId());
        for (HeldRead read : fact.readings()) {
            tx.sql()
                    .insertInto(WINDING_HELD)
                    .set(WINDING_HELD.WIND_ID, fact.windId())
                    .set(WINDING_HELD.SECONDS, read.seconds())
                    .set(WINDING_HELD.TORQUE_NMM, read.torqueNmm())
                    .set(WINDING_HELD.RESOLUTION_NMM, read.resolutionNmm())
                    .set(WINDING_HELD.TYPED, read.typed())
                    .execute();
        }
    }

    private static void motor(Tx tx, WindMotor fact) {
        tx.sql()
                .update(WINDING_WIND)
                .set(WINDING_WIND.MOTOR_ID, fact.motorId())
                .where(WINDING_WIND.ID.eq(fact.windId()))
                .execute();
    }

    private static void reader(Tx tx, WindReader fact) {
        tx.sql()
                .update(WINDING_WIND)
                .set(WINDING_WIND.DEVICE, fact.device())
                .where(WINDING_WIND.ID.eq(fact.windId()))
                .execute();
    }

    /** Gone from the tables, as if it had not been made; the journal has it. */
    private static void undone(Tx tx, WindUndone fact) {
        Rows.into(WINDING_UNDONE).accept(tx, fact);
        for (TableField<?, String> id : List.of(
                WINDING_WIND.ID, WINDING_WINDER.WIND_ID, WINDING_MARK.ID, WINDING_PHASE.ID, WINDING_FLOOR_MARK.ID)) {
            Rows.remove(tx, id, fact.tapId());
        }
    }
}
