package org.skeinday.steps;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** All cautions, by hazard; the venue's rules and the supervising adults first. */
public final class Cautions {
    /** More at once are not read. */
    public static final int AT_ONCE = 2;

    /** While a wound motor is held, loaded or run back. */
    public static final String GOGGLES = "goggles";

    /** While a model is in the air. */
    public static final String LOOKING_UP = "looking-up";

    /** From the landing until the motor is run back. */
    public static final String LANDED = "landed-is-live";

    /** Where motors are lubricated. */
    public static final String DRIPPED = "dripped-lubricant";

    private static final List<Caution> ALL = List.of(
            new Caution(
                    "venue-rules",
                    Hazard.VENUE,
                    Set.of(Moment.ARRIVAL, Moment.WINDING_PLACE),
                    "The venue's rules, the local codes and the organiser's safety officer come before anything written here.",
                    "They know this building and answer for everyone in it."),
            new Caution(
                    "supervising-adult",
                    Hazard.YOUNG_PEOPLE,
                    Set.of(Moment.WINDING_PLACE, Moment.BEFORE_WINDING),
                    "A supervising adult is at each winding place while anyone winds.",
                    "Somebody must have eyes and hands free when something goes wrong."),
            new Caution(
                    "eyes",
                    Hazard.STRETCHED_RUBBER,
                    Set.of(Moment.WINDING_PLACE, Moment.BEFORE_WINDING),
                    "Everyone within reach of the lane wears eye protection, those who only watch too.",
                    "A strand that parts is faster than anybody blinks."),
            new Caution(
                    "past-the-ends",
                    Hazard.STRETCHED_RUBBER,
                    Set.of(Moment.WINDING_PLACE, Moment.BEFORE_WINDING),
                    "Nobody stands in line with either end, and no model inside the marked distance.",
                    "A broken motor flies past its ends, and it lashes to the side as it goes."),
            new Caution(
                    "mount",
                    Hazard.WINDING,
                    Set.of(Moment.WINDING_PLACE),
                    "Pull the mount harder than any motor will before the first crank turn.",
                    "A mount that lets go comes at the winder with a wire hook in front."),
            new Caution(
                    "direction-and-ratio",
                    Hazard.WINDING,
                    Set.of(Moment.BEFORE_WINDING),
                    "Check the arrow for the direction and one marked turn for the ratio.",
                    "Wound the wrong way or by the wrong count, a good motor is lost."),
            new Caution(
                    "anyone-says-stop",
                    Hazard.WINDING,
                    Set.of(Moment.BEFORE_WINDING),
                    "If anyone says stop, run it back and ask no questions.",
                    "Who sees the danger has no time to explain it."),
            new Caution(
                    "both-ends-live",
                    Hazard.WOUND_MOTOR,
                    Set.of(Moment.BEFORE_LOADING),
                    "Treat both ends as live until both are on the model.",
                    "A wound motor that slips off at one end spins and whips at the other."),
            new Caution(
                    "seat-and-tug",
                    Hazard.WOUND_MOTOR,
                    Set.of(Moment.BEFORE_LOADING),
                    "With hands free of grease take each ring, seat it and tug it before your hand leaves.",
                    "A ring that only looks seated lets go in the air or in your face."),
            new Caution(
                    "any-doubt",
                    Hazard.WOUND_MOTOR,
                    Set.of(Moment.BEFORE_LOADING),
                    "In any doubt put it back on the meter, run it down and begin anew; nobody is blamed for it.",
                    "A motor run down costs minutes, a model or an eye is not to be had again."),
            new Caution(
                    "hold-the-frame",
                    Hazard.CARRYING,
                    Set.of(Moment.MODEL_INSPECTION, Moment.BEFORE_LOADING, Moment.AFTER_LANDING),
                    "Carry by the frame, and stop the rotor with the hand that holds it until the motor is off.",
                    "Blades carry nothing, and a rotor let loose on a wound motor breaks itself and cuts."),
            new Caution(
                    "free-the-feet",
                    Hazard.CARRYING,
                    Set.of(Moment.ARRIVAL, Moment.AFTER_LANDING),
                    "Free every foot from floor or box before you lift, with unhurried hands.",
                    "A foot that hangs on twists the frame, and nobody sees it until the next flight."),
            new Caution(
                    "gritty",
                    Hazard.RUBBER_HYGIENE,
                    Set.of(Moment.AFTER_LANDING, Moment.END_OF_DAY),
                    "A motor that fell is gritty until it is washed, dried and lubricated.",
                    "One grain of grit cuts a strand as it is stretched."),
            new Caution(
                    "dry-breaks-wet-slips",
                    Hazard.RUBBER_HYGIENE,
                    Set.of(Moment.PACKING, Moment.END_OF_DAY),
                    "Lubricate thinly, and keep rubber dark and cool.",
                    "Dry rubber breaks, wet rubber slips, and light and heat age it."),
            new Caution(
                    GOGGLES,
                    Hazard.STRETCHED_RUBBER,
                    Set.of(Moment.BEFORE_LOADING),
                    "Goggles stay on until release, and are on again for running back.",
                    "A wound motor parts in the hand as well as on the meter."),
            new Caution(
                    LOOKING_UP,
                    Hazard.CARRYING,
                    Set.of(Moment.BEFORE_LOADING),
                    "Nobody walks while looking up.",
                    "Who watches a model sees no tape, no cable and nobody else."),
            new Caution(
                    LANDED,
                    Hazard.WOUND_MOTOR,
                    Set.of(Moment.AFTER_LANDING),
                    "A landed motor is live until it is off and counted back.",
                    "The turns that are left still spin a rotor and whip a ring."),
            new Caution(
                    DRIPPED,
                    Hazard.RUBBER_HYGIENE,
                    Set.of(Moment.PACKING, Moment.END_OF_DAY),
                    "Dripped lubricant is wiped off the floor at once.",
                    "Who slips there falls with a model or a wound motor in hand."),
            new Caution(
                    "stuck-aloft",
                    Hazard.RETRIEVAL,
                    Set.of(Moment.ARRIVAL, Moment.AFTER_LANDING),
                    "Nobody climbs after a model; the venue's people and a pole only.",
                    "A fall is worse than a lost model."));

    /** Before a motor is wound until it breaks, in place of the others. */
    private static final List<Caution> OF_BREAKING = List.of(
            new Caution(
                    "wound-to-break",
                    Hazard.STRETCHED_RUBBER,
                    Set.of(Moment.BEFORE_WINDING),
                    "Wound until it breaks: everyone in reach covers the eyes, nobody stands in line with an end, no model"
                            + " lies near.",
                    "Both ends fly past their hooks, and nobody knows at which turn."),
            new Caution(
                    "adult-at-breaks",
                    Hazard.YOUNG_PEOPLE,
                    Set.of(Moment.BEFORE_WINDING),
                    "A supervising adult stands by; where the venue's rules forbid it, it is not done here.",
                    "It comes without a warning, and the venue's rules come first."));

    private Cautions() {}

    public static List<Caution> all() {
        return ALL;
    }

    /** @param inFull the whole text; else one line that opens */
    public record Shown(Caution caution, boolean inFull) {}

    /** Before a motor is wound until it breaks. @param metToday as in {@link #at} */
    public static List<Shown> ofBreaking(Set<String> metToday) {
        return OF_BREAKING.stream()
                .map(c -> new Shown(c, !metToday.contains(c.id())))
                .toList();
    }

    /**
     * Those with these ids.
     *
     * @throws IllegalArgumentException when there is none with an id
     */
    public static List<Caution> named(String... ids) {
        return Stream.of(ids)
                .map(id -> find(id).orElseThrow(
                                () -> new IllegalArgumentException("There must be a caution '" + id + "'")))
                .toList();
    }

    public static Optional<Caution> find(String id) {
        return Stream.concat(ALL.stream(), OF_BREAKING.stream())
                .filter(c -> c.id().equals(id))
                .findFirst();
    }

    /** What to do, where there is room for one sentence. @throws IllegalArgumentException when there is none with this id */
    public static String words(String id) {
        return named(id).get(0).what();
    }

    /** One line that opens. */
    public static List<Shown> brief(String id) {
        return List.of(new Shown(named(id).get(0), false));
    }

    /**
     * What one person is shown at a moment: in full what this person meets for the first time on the day, and before all
     * else; then, as one line each, what was met before. At most two, and none while it is quiet.
     *
     * @param metToday ids of cautions that this person met on this day
     */
    public static List<Shown> at(Moment moment, Set<String> metToday) {
        if (moment.isQuiet()) {
            return List.of();
        }
        return ALL.stream()
                .filter(c -> c.moments().contains(moment))
                .map(c -> new Shown(c, !metToday.contains(c.id())))
                .sorted(Comparator.comparing((Shown s) -> !s.inFull())
                        .thenComparing(s -> s.caution().hazard()))
                .limit(AT_ONCE)
                .toList();
    }
}
