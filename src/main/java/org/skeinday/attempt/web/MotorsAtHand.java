package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.MotorChoice;
import org.skeinday.attempt.MotorShares;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.attempt.store.MotorsInHand;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;

/** Which motors an entry may fly with now, in one order on every page: Now, Bench, Day, the choice, the printed card. */
public final class MotorsAtHand {
    private final Tx tx;
    private final List<MotorLife> all;

    /** Without those that are out or gritty. */
    private final List<MotorLife> motors;

    /** By event. */
    private final Map<String, Set<String>> inHand = new HashMap<>();

    private final MotorUses uses;
    private final MotorRanks ranks;

    /** By team, made when first asked for. */
    private final Map<String, MotorShares> shares = new HashMap<>();

    /** One or none; null before it was asked for. */
    private @Nullable List<Today> day;

    /**
     * @param reason of its place among them, in words
     * @param neededBy name of the other entry whose next motor or spare it is; empty for none
     * @param isPlanned whether the plan in force has it for that one
     */
    public record Offer(MotorAdded motor, int uses, String reason, String neededBy, boolean isPlanned) {
        boolean isFree() {
            return neededBy.isEmpty();
        }

        /** Begins with its separator; empty for a free one. */
        public String forWhom() {
            if (isFree()) {
                return "";
            }
            return isPlanned ? " · planned for " + neededBy + ": take it all the same" : " · needed by " + neededBy;
        }
    }

    /** Reads the motors once, for every entry that is asked about. */
    public MotorsAtHand(Tx tx) {
        this.tx = tx;
        this.all = MotorLifeStore.all(tx);
        this.motors = all.stream()
                .filter(life -> !life.stage().isOut() && life.stage() != MotorStage.GRITTY)
                .toList();
        this.uses = MotorUseStore.all(tx);
        this.ranks = new MotorRanks(tx, uses);
    }

    /**
     * Those that it may fly with when its window comes: as {@link #offers}, and those that are handed in until then; after them
     * what other entries need, last what was just wound or flown and comes ready later.
     */
    public List<MotorLife> planned(EntryAdded entry, List<ModelAdded> models) {
        return ranks.of(entry, models, motors).stream()
                .map(MotorRanks.Ranked::life)
                .sorted(Comparator.comparingInt(life ->
                        comesLater(entry, life) ? 2 : neededBy(life, entry).isPresent() ? 1 : 0))
                .toList();
    }

    /** Just off a wind or a flight: it is run back and rests before it may be wound. What an attempt has in hand is its own. */
    public boolean comesLater(EntryAdded entry, MotorLife life) {
        return switch (life.stage()) {
            case WOUND, ON_MODEL, FLOWN, RUN_BACK, RESTING ->
                !life.handedIn() && !inHand(entry).contains(life.motor().id());
            default -> false;
        };
    }

    /** The motor that the plan in force has for an attempt and that may not be wound yet; empty where it may, or never. */
    Optional<MotorLife> plannedLater(EntryAdded entry, AttemptNumber number) {
        return Assignments.plannedMotor(tx, entry, number)
                .flatMap(tag -> fitting(entry, motors).stream()
                        .filter(life -> life.motor().tag().equals(tag))
                        .findFirst())
                .filter(life -> !isFlyable(entry, life) && !isWithAnother(entry, life));
    }

    /** Another entry's attempt has it in hand: whatever the plan had, this one is dealt another. */
    private boolean isWithAnother(EntryAdded entry, MotorLife life) {
        return inHand(entry).contains(life.motor().id())
                && underWayMotor(entry).filter(life.motor().id()::equals).isEmpty();
    }

    private Optional<String> underWayMotor(EntryAdded entry) {
        return today().flatMap(day -> day.underWayOf(entry)).flatMap(a -> Optional.ofNullable(a.motorId()));
    }

    /** All that turn as its model does and are its own or, where it has declared none, the team's, whatever their state. */
    List<MotorLife> fitting(EntryAdded entry) {
        return fitting(entry, all);
    }

    private List<MotorLife> fitting(EntryAdded entry, List<MotorLife> among) {
        return ranks.of(entry, ModelStore.ofEntry(tx, entry.id()), among).stream()
                .map(MotorRanks.Ranked::life)
                .toList();
    }

    /** Name of the other entry whose next motor or spare it is. */
    Optional<String> neededBy(MotorLife life, EntryAdded notThis) {
        return shares(notThis).neededBy(life.motor().id(), notThis.id()).map(this::name);
    }

    /** The same for a page that people work on: none where it cannot be found out, which the log then says why. */
    static List<Offer> offersOrNone(Tx tx, EntryAdded entry, List<ModelAdded> models) {
        return Apart.made(
                "Which motors may be flown", () -> new MotorsAtHand(tx).offers(entry, models), words -> List.of());
    }

    /** What an entry is called with unless somebody chooses another; empty where others need all that can be flown. */
    static Optional<MotorAdded> assigned(List<Offer> offers) {
        return offers.stream().findFirst().filter(Offer::isFree).map(Offer::motor);
    }

    /** As {@link #offers}, without those that other entries need. */
    List<MotorAdded> free(EntryAdded entry) {
        return offers(entry, ModelStore.ofEntry(tx, entry.id())).stream()
                .filter(Offer::isFree)
                .map(Offer::motor)
                .toList();
    }

    /**
     * What is assigned to it and to no other entry: the motor of the attempt that it calls next, also where the plan in force
     * has one that comes ready later, the spare, further ones; the spare first where an attempt has its motor. Fewer where the
     * team has no more.
     */
    public List<MotorAdded> own(EntryAdded entry) {
        Stream<MotorAdded> planned = isUnderWay(entry)
                ? Stream.empty()
                : plannedLater(entry, AttemptNumbers.next(tx, entry)).map(MotorLife::motor).stream();
        Stream<MotorAdded> shared = shares(entry).of(entry.id()).stream()
                .flatMap(id -> motors.stream().map(MotorLife::motor).filter(m -> m.id().equals(id)));
        return Stream.concat(planned, shared).toList();
    }

    private boolean isUnderWay(EntryAdded entry) {
        return today().filter(day -> day.hasMotorInHand(entry)).isPresent();
    }

    /**
     * Those that it has declared, else the team's, that can be flown (not handed in, gritty, broken, lost or retired; not
     * wound, not just flown, in no attempt's hand) and turn the right way: first what it is assigned of the team's motors
     * ({@link MotorShares}), then as {@link MotorChoice} ranks them, last what the team's other entries need.
     */
    public List<Offer> offers(EntryAdded entry, List<ModelAdded> models) {
        MotorShares share = shares(entry);
        Map<String, MotorRanks.Ranked> free = new LinkedHashMap<>();
        flyable(entry, models).forEach(r -> free.put(r.life().motor().id(), r));
        return free.keySet().stream()
                .sorted(share.order(entry.id()))
                .map(id -> offer(
                        Objects.requireNonNull(free.get(id)),
                        share.neededBy(id, entry.id()).map(this::name).orElse(""),
                        share.isPlannedFor(id, entry.id())))
                .toList();
    }

    /** An entry of another day than the one at hand shares with nobody. */
    private MotorShares shares(EntryAdded entry) {
        List<EntryAdded> flying = today().stream()
                .flatMap(day -> day.ownByTurn().stream())
                .filter(other -> other.team().equals(entry.team()))
                .toList();
        return flying.stream().anyMatch(other -> other.id().equals(entry.id()))
                ? shares.computeIfAbsent(
                        entry.team(),
                        team -> new MotorShares(flying.stream().map(this::asks).toList()))
                : new MotorShares(List.of(asks(entry)));
    }

    /** Read when first asked for: of an entry that nobody asks about nothing is shared. */
    private Optional<Today> today() {
        List<Today> known = day;
        if (known == null) {
            known = Today.read(tx).stream().toList();
            day = known;
        }
        return known.stream().findFirst();
    }

    private String name(String entry) {
        return today().map(day -> day.entry(entry).name()).orElse(entry);
    }

    private MotorShares.Asks asks(EntryAdded entry) {
        List<MotorAdded> free = flyable(entry, ModelStore.ofEntry(tx, entry.id())).stream()
                .map(r -> r.life().motor())
                .toList();
        return new MotorShares.Asks(
                entry.id(),
                isUnderWay(entry),
                Assignments.plannedMotor(tx, entry, AttemptNumbers.next(tx, entry))
                        .flatMap(tag ->
                                free.stream().filter(m -> m.tag().equals(tag)).findFirst())
                        .map(MotorAdded::id)
                        .orElse(null),
                free.stream().map(MotorAdded::id).toList());
    }

    private List<MotorRanks.Ranked> flyable(EntryAdded entry, List<ModelAdded> models) {
        return ranks.of(
                entry,
                models,
                motors.stream().filter(life -> isFlyable(entry, life)).toList());
    }

    boolean isFlyable(EntryAdded entry, MotorLife life) {
        return life.whyNotFlown().isEmpty()
                && !life.stage().isOut()
                && !life.stage().isLoaded()
                && life.stage() != MotorStage.FLOWN
                && !inHand(entry).contains(life.motor().id());
    }

    Set<String> inHand(EntryAdded entry) {
        return inHand.computeIfAbsent(
                entry.eventId(), event -> MotorsInHand.byMotor(tx, event).keySet());
    }

    private Offer offer(MotorRanks.Ranked ranked, String neededBy, boolean isPlanned) {
        MotorAdded motor = ranked.life().motor();
        return new Offer(motor, uses.of(motor.id()), ranked.reason(), neededBy, isPlanned);
    }
}
