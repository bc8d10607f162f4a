package org.skeinday.steps.action;

import java.util.Set;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.CautionMet;
import org.skeinday.steps.Cautions;

/** Cautions that somebody has met in full. */
public final class MeetCaution {
    private MeetCaution() {}

    /** A caution's full text was in front of somebody. @param day ISO date in the hall */
    public record Met(String caution, String day) {}

    static Decision decide(Tx tx, ActContext context, Met met) {
        if (Cautions.find(met.caution()).isEmpty() || !met.day().matches("\\d{4}-\\d\\d-\\d\\d")) {
            return Decision.unknown("There is no such caution; load the page again");
        }
        var fact = new CautionMet(
                context.ownId(),
                reader(context.person(), context.device()),
                met.day(),
                met.caution(),
                context.now().toEpochMilli());
        return Decision.decided(Set.of("cautions"), Fact.of("caution.met", fact));
    }

    /** Who meets a caution: the person, or the device where nobody said who holds it. */
    public static String reader(String person, String device) {
        return person.isEmpty() ? "device " + device : person;
    }
}
