package org.skeinday.attempt.web;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.OneNumber;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.contest.DayKind;
import org.skeinday.steps.Cautions;
import org.skeinday.steps.web.GateView;
import org.skeinday.steps.web.StripView;

/**
 * The attempt under way, or the one that must come next, as Now shows it.
 *
 * @param live with no id for one that is to be called
 * @param title entry and attempt
 * @param number the one number of the page
 * @param window of the entry, with its last call; shown small beside another number
 * @param plan of its motor; null where none is shown now
 * @param lines the rest, label and value
 */
public record NowCard(
        LiveAttempt live,
        String title,
        StripView strip,
        OneNumber number,
        WindowClock window,
        NowView.@Nullable Plan plan,
        List<NowView.Line> lines,
        Missing missing,
        Acts acts) {

    /** Nobody has called it yet. */
    public boolean isToCall() {
        return live.phase().name() == AttemptPhase.Name.NEXT;
    }

    /** Class of the shape of its state: as the strip has it, what people come first for does not look like going on. */
    public String look() {
        return isToCall() ? "" : live.phase().name().isUrgent() ? "blocked" : "now";
    }

    /** Since when the model is held aloft, epoch ms; 0 while it flies free. */
    public long caughtSinceMs() {
        return live.phase() instanceof AttemptPhase.InTheAir flies && flies.caughtMs() != null
                ? flies.sinceMs() + flies.caughtMs()
                : 0;
    }

    /** Its phase in words. */
    public String state() {
        return PhaseWords.of(live);
    }

    /** Elsewhere a window starts at the word of an official, until the model goes. */
    public boolean startsWindow() {
        return live.day() == DayKind.VISITING
                && switch (live.phase().name()) {
                    case NEXT, CALLED, WINDING, HOLDING -> true;
                    default -> false;
                };
    }

    /** Whether the captain can do this now. */
    public boolean offers(AttemptAct act) {
        return CardActs.of(live).contains(act);
    }

    /** Whether something else comes before what can be done in this phase: the checks, the officials, people. */
    public boolean waitsForMore() {
        return !missing.waits().isOpen()
                || missing.stopped()
                || missing.doubted()
                || missing.announcement()
                || live.phase().name().isUrgent();
    }

    /**
     * What is missing before it goes on, or stands against it.
     *
     * @param quiet since when nobody may be helped, in words; empty when all may
     * @param cautions what people must know or look at
     * @param brief cautions of this moment, each one line that opens
     * @param waits what winding waits for
     * @param announcement whether the time of officials elsewhere is not known yet
     * @param stopped whether the hall stands still
     * @param shut whether it is only called and its window has closed
     * @param doubted whether the time is taken with a reason only
     */
    public record Missing(
            String quiet,
            List<String> cautions,
            List<Cautions.Shown> brief,
            GateView waits,
            boolean announcement,
            boolean doubted,
            boolean stopped,
            boolean shut) {}

    /**
     * What can be done, for the captain: others see none of it.
     *
     * @param seen what this card shows of the attempt, for the server to see whether that still holds
     * @param deeds one key each, the first one the way on
     * @param models and {@code motors} to call it with
     * @param spares other motors for it, after a break or before winding
     * @param places where else it can be wound, and where it is
     * @param judges watches of which the captain may say what holds; empty when not now
     * @param several times of a watch that has sent more than one, the one that counts marked; empty when not now
     * @param catches whether the time of a watch may be the one at the catch
     * @param announces whether the time of officials elsewhere is typed in here
     * @param said when what can be said anew was said last
     * @param hands who can do what; empty where nobody can be named any more
     * @param broke id of the break of its motor that can be taken back with a reason; empty where there is none
     * @param choose whether motors and fractions can be chosen for the attempts left
     */
    public record Acts(
            String seen,
            List<NowView.Deed> deeds,
            List<NowView.Choice> models,
            List<NowView.Choice> motors,
            List<NowView.Choice> spares,
            WindingPlaces places,
            List<Integer> judges,
            List<NowView.Choice> several,
            boolean catches,
            boolean announces,
            boolean choose,
            Said said,
            List<NowView.Hand> hands,
            String broke) {
        /** Ids of motors that the plan means for another entry, parted by spaces. */
        public String meant() {
            return motors.stream()
                    .filter(NowView.Choice::meant)
                    .map(NowView.Choice::id)
                    .collect(Collectors.joining(" "));
        }
    }

    /** When people, the announced time and each hand watch's time were said last, as {@code SaidMeanwhile} writes it. */
    public record Said(String hands, String announced, String watches) {}
}
