package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Answer;

/** Files that take long to be written: their page says how far they have come, asks again, and tells what became of them. */
final class UnderWay {
    /** Then a page waits no longer for its answer, and asks for it. */
    static final Duration PATIENCE = Duration.ofSeconds(2);

    static final String TAKEN = "All of it is in the record now.";
    private static final String AGAIN = "Take them in once more.";
    private static final String GOES_ON = "Every page can be read meanwhile; what is entered waits until this is done.";

    private final PrepareContext desk;

    UnderWay(PrepareContext desk) {
        this.desk = desk;
    }

    void register(Routes routes) {
        routes.get("/import/told", Role.COACH, ctx -> tell(ctx, String.valueOf(ctx.queryParam("act"))));
    }

    /** Answers with what became of the files that came under this number, or how far they are. */
    void tell(Context ctx, String act) {
        Optional<Answer> told = desk.forms().told(act);
        if (told.isPresent() && told.get() instanceof Answer.NotYet notYet) {
            show(ctx, new ImportView("Taking them in", List.of(), List.of(), List.of(), act, far(notYet.reason())));
        } else if (told.isPresent() && told.get() instanceof Answer.Saved) {
            show(ctx, new ImportView(TAKEN, List.of(), List.of(), List.of()));
        } else {
            show(ctx, refused(told.map(UnderWay::reason).orElse(AGAIN)));
        }
    }

    private static String far(String progress) {
        return (progress.isBlank() ? "They wait for their turn." : progress) + " " + GOES_ON;
    }

    private static String reason(Answer answer) {
        return answer instanceof Answer.Refused refused
                ? refused.reason()
                : answer instanceof Answer.DiskFull full ? full.reason() : AGAIN;
    }

    /** @param why a line for each thing that is wrong */
    static ImportView refused(String why) {
        return new ImportView("Nothing was taken.", List.of(), why.lines().toList(), List.of());
    }

    private void show(Context ctx, ImportView view) {
        desk.page().fragment(ctx, "prepare/_import.jte", view);
    }
}
