package org.skeinday.bench.web;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.FullHands;
import org.skeinday.attempt.web.NowView;
import org.skeinday.attempt.web.WindingPlaces;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.steps.Cautions;
import org.skeinday.steps.web.GateView;
import org.skeinday.steps.web.StripView;

/**
 * The Winding page in finished words.
 *
 * @param none why nothing is wound, empty when there is an attempt
 * @param problem why this motor must not be wound, empty when it may
 * @param direction the first thing to check
 * @param lacks which figures cannot be computed, in words
 * @param motor id of the motor
 * @param wind id of the wind, empty before the first crank turn
 * @param own whether this device reads it, or nobody does yet
 * @param quiet whether only the reader may see it
 */
public record WindingView(
        String title,
        String none,
        String attempt,
        String problem,
        String direction,
        List<BenchView.Line> plan,
        List<FloorMark> floor,
        List<String> lacks,
        String motor,
        String wind,
        boolean own,
        boolean quiet,
        boolean isOver,
        @Nullable Live live,
        Reader reader,
        @Nullable After after,
        More more,
        At at,
        FormErrors form) {
    /**
     * Where its attempt stands.
     *
     * @param strip no step without an attempt
     * @param done ids of winds of this motor that are over, for a device that still shows one
     * @param first whether something comes before everything else, on top of the page
     * @param unread id of a break of its motor whose wind nobody read, and whose turns nobody has told; empty for none
     * @param hands of whoever looks, on a device of their own
     * @param readerBound whether the device that began to read it is that of somebody who has no key for it
     */
    public record At(StripView strip, String done, boolean first, String unread, FullHands hands, boolean readerBound) {
        static final At NOWHERE = new At(StripView.NONE, "", false, "", FullHands.FREE, false);
    }

    /**
     * What stands beside keys and counts.
     *
     * @param flight null before the release
     * @param picture null without a reading
     * @param aim null when nothing can be wanted any more, or nobody may be helped
     * @param spares other motors that can be flown, while this one is not being wound
     * @param places where it is wound, and where else it can be
     * @param flights the last ones, with what is still to be told
     * @param cautions before the first crank turn, in full for who meets them first on {@code today}; empty for a motor
     *     without an attempt
     * @param waits what the first crank turn waits for
     * @param others attempts that are under way beside this one
     * @param shown the attempt that was asked for by name, empty for the one under way
     * @param back words of the link away from an attempt that was asked for by name
     */
    public record More(
            @Nullable FlightView flight,
            @Nullable WindPictureView picture,
            @Nullable Aims aim,
            List<Spare> spares,
            WindingPlaces places,
            List<Past> flights,
            Hold hold,
            String shown,
            String back,
            GateView waits,
            List<Cautions.Shown> cautions,
            String today,
            List<NowView.Choice> others) {
        static More none(List<Past> flights) {
            return new More(
                    null,
                    null,
                    null,
                    List.of(),
                    WindingPlaces.ONE,
                    flights,
                    new Hold(0, ""),
                    "",
                    "",
                    GateView.OPEN,
                    List.of(),
                    "",
                    List.of());
        }
    }

    /** @param isUnderWay whether an attempt is, that the link away from this one leads to */
    WindingView listing(List<Past> flights, String shown, boolean isUnderWay, List<NowView.Choice> others) {
        var listed = new More(
                more.flight,
                more.picture,
                more.aim,
                more.spares,
                more.places,
                flights,
                more.hold,
                shown,
                isUnderWay ? "To the attempt under way" : "To Winding",
                more.waits,
                more.cautions,
                more.today,
                others);
        return new WindingView(
                title, none, attempt, problem, direction, plan, floor, lacks, motor, wind, own, quiet, isOver, live,
                reader, after, listed, at, form);
    }

    /** The same with what this person reads before the first crank turn. @param today ISO date in the hall */
    WindingView cautioned(List<Cautions.Shown> cautions, String today) {
        var told = new More(
                more.flight,
                more.picture,
                more.aim,
                more.spares,
                more.places,
                more.flights,
                more.hold,
                more.shown,
                more.back,
                more.waits,
                cautions,
                today,
                more.others);
        return new WindingView(
                title, none, attempt, problem, direction, plan, floor, lacks, motor, wind, own, quiet, isOver, live,
                reader, after, told, at, form);
    }

    /**
     * What is wanted, as it can be typed.
     *
     * @param unit in which it is typed, {@code shown} as it stands in labels
     * @param seen when it was set last, for the server to see whether that still holds
     */
    public record Aims(String launch, String ceiling, String unit, String shown, String seen, FormErrors form) {}

    /** @param meant whether the plan means it for another entry, as its words say */
    public record Spare(String motor, String words, boolean meant) {}

    /** @param lacks what is still to be told of it, empty when all is */
    public record Past(String attempt, String title, String lacks) {}

    /** @param sinceMs of the last turn put on; 0 when it is not held @param words on how long */
    public record Hold(long sinceMs, String words) {}

    /** What is wrong with a field of the last form. */
    public String wrong(String field) {
        return form.message(field);
    }

    /** What was refused of a form that is not shown now, as another phase has it; empty when the form itself says it. */
    public String refusedAside() {
        FlightView flight = more.flight;
        boolean asksTurns = flight != null && flight.landing() != null;
        boolean asksTorque = more.aim != null || (flight != null && flight.unread() != null);
        return !asksTurns && !wrong("remaining").isEmpty() ? wrong("remaining") : asksTorque ? "" : wrong("launch");
    }

    public record FloorMark(int number, String turns, String distance) {}

    /**
     * What the others see while it happens.
     *
     * @param level division on the meter
     * @param torque the same with its unit; empty while a division's worth is not known
     * @param near how many divisions are to go to the torque limit
     * @param place where the winder stands, as seen or as estimated
     * @param turns about how many are on
     * @param spots floor marks that somebody beside the line may tap; empty without a plan
     */
    public record Live(
            String phase,
            String level,
            String torque,
            String near,
            String word,
            String place,
            String turns,
            List<Spot> spots) {}

    /**
     * A floor mark to be tapped.
     *
     * @param id of what was tapped, empty with {@code seen} false
     * @param undoUntil epoch ms until which this device may take it back, 0 when it may not
     */
    public record Spot(String number, boolean seen, String id, long undoUntil) {}

    /** What the reader's script needs. Figures that are not known are empty. */
    public record Reader(
            String began,
            String perMark,
            String unit,
            String atFull,
            String target,
            String ceilingLevel,
            String floorCounts,
            String floorWords,
            String backOff,
            String wanted,
            String meterEnds,
            String limits,
            String speaks,
            Crank crank,
            Told told) {
        static final Reader NOTHING = new Reader(
                "", "", "", "", "", "", "", "", "", "", "", "", "", Crank.NOTHING, new Told("", "", "", 0, ""));
    }

    /**
     * Which way the crank is turned.
     *
     * @param turn in words; empty while nobody has seen which way this winder's hook turns for it
     * @param seen who saw it when, empty with {@code turn}
     * @param station of the winder; empty where none is prepared
     */
    public record Crank(String turn, String seen, String station) {
        static final Crank NOTHING = new Crank("", "", "");

        /** Nobody has seen it yet: a caution, and no more. */
        public boolean isOpen() {
            return turn.isEmpty() && !station.isEmpty();
        }
    }

    /**
     * How far a wind has come: the needle's division, the phase, when it was stepped in.
     *
     * @param phases how many steps were told so far: a device that has told more knows better
     * @param atMark floor mark at which the winder was seen, empty while nobody said so
     */
    public record Told(String level, String phase, String inMs, int phases, String atMark) {}

    /**
     * After the wind: its turns, doubts and figures.
     *
     * @param asPlanned whether the planned turns may be confirmed with one tap
     * @param lead what is asked for, while nobody has counted
     * @param broke whether the turns are those at a break
     * @param settled readings that were left out or confirmed, each of which can be taken back
     * @param offered what the form proposes, by its field: as long as nobody changes it or says that it was so, it is offered
     */
    public record After(
            String atFull,
            String stop,
            String backOff,
            boolean counted,
            boolean asPlanned,
            List<DoubtLine> doubts,
            List<DoubtLine> settled,
            List<BenchView.Line> figures,
            String lead,
            boolean broke,
            Held held,
            Map<String, String> offered,
            FormErrors form) {
        public String wrong(String field) {
            return form.message(field);
        }
    }

    /** What was read while it was held, as typed. @param unit as the field says it @param typed as the record writes it */
    public record Held(String readings, String unit, String typed) {}

    public record DoubtLine(String mark, String words) {}
}
