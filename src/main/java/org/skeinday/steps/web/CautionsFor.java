package org.skeinday.steps.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.steps.Cautions;
import org.skeinday.steps.Moment;
import org.skeinday.steps.action.MeetCaution;
import org.skeinday.steps.store.RunStore;

/** The cautions as one person is shown them today: in full at the first meeting, then in one line that opens. */
public final class CautionsFor {
    private static final String EYES = "eyes";

    private final Tx tx;
    private final Caller caller;
    private final Clock clock;

    public CautionsFor(Tx tx, Context ctx, Clock clock) {
        this.tx = tx;
        this.caller = Access.callerOf(ctx);
        this.clock = clock;
    }

    /** ISO date in the hall. */
    public String today() {
        return LocalDate.now(clock).toString();
    }

    public List<Cautions.Shown> at(Moment moment) {
        return Cautions.at(moment, met());
    }

    /** Where no list is walked before: eye protection is said every time. */
    public List<Cautions.Shown> withoutChecks() {
        Set<String> met = met();
        return Stream.concat(
                        Cautions.named(EYES).stream().map(c -> new Cautions.Shown(c, !met.contains(c.id()))),
                        Cautions.at(Moment.BEFORE_WINDING, met).stream()
                                .filter(s -> !s.caution().id().equals(EYES)))
                .limit(Cautions.AT_ONCE)
                .toList();
    }

    /** Of a motor that is wound until it breaks. */
    public List<Cautions.Shown> ofBreaking() {
        return Cautions.ofBreaking(met());
    }

    private Set<String> met() {
        return RunStore.met(
                tx,
                MeetCaution.reader(caller.person(), caller.device()),
                today(),
                clock.millis() - ChecksPages.READING_MS);
    }
}
