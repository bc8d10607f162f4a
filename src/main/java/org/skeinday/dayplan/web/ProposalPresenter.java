package org.skeinday.dayplan.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.skeinday.dayplan.DayPlan;
import org.skeinday.dayplan.Effort;
import org.skeinday.dayplan.Outcome;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.Proposed;
import org.skeinday.dayplan.Scenario;
import org.skeinday.dayplan.action.TakePlan;

/** Makes a proposal: asks for a plan of the day, or of one that is supposed, and says what it would change. */
final class ProposalPresenter {
    private static final long LEAD_S = 60;

    private final DayNow day;
    private final DayPresenter of;
    private final Scenario.Change change;
    private final Proposed proposed;
    private final List<PlanTaken.Planned> tasks;
    private final boolean stays;

    private ProposalPresenter(DayNow day, DayPresenter of, Scenario.Change change) {
        this.day = day;
        this.of = of;
        this.change = change;
        this.proposed = proposed();
        DayPlan plan = proposed.outcome().plan();
        this.tasks = plan == null ? List.of() : of.planned(proposed.problem(), plan);
        this.stays = proposed.outcome().keptInForce() && !givesUpOthers(proposed);
    }

    /** Computes one: this takes its time. */
    static ProposalPresenter ask(DayNow day, DayPresenter of, Scenario.Change change) {
        return new ProposalPresenter(day, of, change);
    }

    /** All starts a minute from now; late by less than that is no news, and less than that gained is not worth a new plan. */
    private Proposed proposed() {
        DayPlan inForce = day.inForce();
        Scenario supposed = day.day().with(change);
        Proposed found = Proposed.of(
                supposed, day.now() + LEAD_S, inForce, Effort.live(), of.words().times());
        return inForce == null
                        || givesUpOthers(found)
                        || found.isWorthTaking(
                                of.problem(day.withoutGivenUp(supposed), Math.max(0, day.now() - LEAD_S)), LEAD_S)
                ? found
                : found.keepingInForce();
    }

    /** Whether it leaves out something else than the plan in force does. */
    private boolean givesUpOthers(Proposed found) {
        return !Set.copyOf(givenUp(found)).equals(Set.copyOf(day.givenUp()));
    }

    /** What does not fit, and what somebody chose to leave out. */
    private List<String> givenUp(Proposed found) {
        List<String> givenUp = new ArrayList<>(found.leftOut());
        if (change.what() == Scenario.What.ATTEMPT_OUT) {
            givenUp.add(change.which());
        }
        return givenUp;
    }

    /** What is taken when it is taken. */
    TakePlan.Take toTake() {
        PlanTaken taken = day.taken();
        return new TakePlan.Take(
                day.event().id(), tasks, day.windows(), givenUp(proposed), taken == null ? null : taken.atMs());
    }

    /** @param id by which it is taken */
    DayView.Proposal view(String id) {
        boolean other = proposed.outcome().plan() != null && !stays;
        return new DayView.Proposal(
                id,
                supposing(),
                words(),
                of.because(of.problem(day.asTaken(), day.now())),
                stays ? List.of() : of.moved(tasks),
                proposed.leftOut(),
                proposed.conflict().stream().map(of.words()::named).toList(),
                proposed.waysOut().stream().map(of.words()::named).toList(),
                other ? of.bands(tasks, "As proposed") : null,
                other && !tasks.isEmpty());
    }

    private String supposing() {
        return change.what() == Scenario.What.NOTHING
                ? ""
                : of.choices().toTry().stream()
                        .filter(p -> p.change().isOfTheSame(change))
                        .findFirst()
                        .map(p -> p.words() + (p.byMinutes() ? " " + change.minutes() + " min" : ""))
                        .orElse("");
    }

    private String words() {
        if (stays) {
            return "The plan in force stays: nothing better was found.";
        }
        if (proposed.problem().tasks().stream().allMatch(task -> task.chain() == null)) {
            return "There is no plan: no attempt fits.";
        }
        return switch (proposed.outcome().status()) {
            case OPTIMAL -> "Proven: no plan has more time in hand where it is shortest" + inHand() + ".";
            case FEASIBLE -> "Every window is kept" + inHand() + "; that there is none better was not proven in time.";
            case INFEASIBLE -> "There is no plan: what has begun cannot be finished inside its window.";
            case UNKNOWN -> "No plan was found in time, and none was ruled out.";
        };
    }

    private String inHand() {
        Outcome outcome = proposed.outcome();
        return outcome.objective().isEmpty()
                ? ""
                : ", " + DayWords.lasting(outcome.objective().getAsLong()) + " in hand";
    }
}
