package org.skeinday.attempt;

import org.skeinday.contest.DayKind;

/** What somebody can do to an attempt, or report of it. Which phase and which hands offer it: {@link AttemptActs}. */
public enum AttemptAct {
    CALL("Call", Way.ON),
    FIRST_TURN("Start winding", Way.ON),
    LAST_TURN("Wound", Way.ON),
    RELEASED("Released", Way.ON),
    /** After the last turn some more are put on: the hold begins anew. */
    MORE_TURNS("More turns", Way.ON),
    /** Some of them are taken off again: the hold goes on. */
    SOME_OFF("Some off", Way.ASIDE),
    NOT_RELEASED("Not released after all", Way.BACK),
    LANDED("Landed", Way.ON),
    STILL_FLYING("Still flying", Way.BACK),
    /** The building, or somebody, holds the model: what the rules make of it is said beside. */
    CAUGHT("Caught", Way.ASIDE),
    FREE_AGAIN("Free again", Way.ASIDE),
    STILL_HELD("Still held", Way.ASIDE),
    /** Where the rules let a flight that a catch ended be flown again: it uses up no attempt. */
    START_AGAIN("Start again", Way.OUT),
    /** With a balloon or a pole, or not at all. */
    STEERED("Steered", Way.ASIDE),
    BROKE("Broke", Way.BACK),
    /** Everyone unhurt, both ends found: before it nothing else is asked, so that it leads on and out. */
    PEOPLE_SAFE("Everyone unhurt, both ends found", Way.BOTH),
    /** A mistaken "Broke" is taken back: the motor is as it was. */
    NOT_BROKEN("It did not break", Way.BACK),
    SAY_WHERE("Where did it part?", Way.ON),
    TAKE_SPARE("Another motor", Way.ON),
    /** The motor is run back, and somebody says how many turns were on. */
    RUN_BACK("Run it back", Way.BOTH),
    /** A hand watch has no tap: what it shows is typed. */
    TYPE_TIME("Type a watch's time", Way.ASIDE),
    JUDGE_WATCH("A watch failed, or must be left out", Way.ASIDE),
    ANNOUNCE("Note the announced time", Way.ASIDE),
    COLLIDED("Collision", Way.ASIDE),
    CLOSE("Take the official time", Way.ON),
    SIGN("Sign", Way.ON),
    REOPEN("Open again", Way.BACK),
    PROTEST("Protest", Way.ASIDE),
    ABANDON("Abandon attempt", Way.OUT),
    DECLARE_VOID("Declare it void", Way.OUT);

    /** Where an act leads. */
    private enum Way {
        ON,
        OUT,
        BOTH,
        BACK,
        ASIDE
    }

    private final String words;
    private final Way way;

    AttemptAct(String words, Way way) {
        this.words = words;
        this.way = way;
    }

    /** As the key says it. */
    public String words() {
        return words;
    }

    /** The same on a day of this kind. */
    public String words(DayKind day) {
        return this == CLOSE && day == DayKind.VISITING ? "Count the announced time" : words;
    }

    /** Whether a day of this kind has it: nothing is announced to a host, and a guest signs nothing here. */
    boolean isOf(DayKind day) {
        return (this != ANNOUNCE || day == DayKind.VISITING) && (this != SIGN || day == DayKind.HOSTING);
    }

    /** Of what is wound: never while the hall stands still. */
    public boolean putsTurnsOn() {
        return this == FIRST_TURN || this == MORE_TURNS;
    }

    /** Towards an official time. */
    public boolean leadsOn() {
        return way == Way.ON || way == Way.BOTH;
    }

    /** Towards an end without one. */
    public boolean leadsOut() {
        return way == Way.OUT || way == Way.BOTH;
    }
}
