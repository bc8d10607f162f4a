package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.record.Record;

/** Outside help: none. From call to sign-off the coach's device writes nothing and nobody is shown advice. */
final class QuietGate {
    private QuietGate() {}

    /** The quiet that lasts now. */
    private static Optional<Quiet> now(Tx tx) {
        return Today.read(tx).flatMap(Today::underWay).map(AttemptNow::id).flatMap(id -> AttemptStore.quietOf(tx, id));
    }

    /** The laptop is not meant: with it alone, a captain runs the day. */
    static void check(Context context, Record record) {
        Caller caller = Access.callerOf(context);
        boolean coach = caller.role() == Role.COACH && !caller.isLaptop();
        if (coach && record.read(QuietGate::now).isPresent()) {
            throw new Refusal(
                    403,
                    "Outside help is not allowed from the call to the sign-off: the coach's device writes nothing.");
        }
    }

    static void refuseAdvice(Record record) {
        if (record.read(QuietGate::now).isPresent()) {
            throw new Refusal(
                    403, "Outside help is not allowed just now: no plan is shown until the attempt is closed.");
        }
    }
}
