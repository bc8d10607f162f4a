package org.skeinday.attempt;

/** What somebody can do to an attempt, or report of it. Which phase and which hands offer it: {@link AttemptActs}. */
public enum AttemptAct {
    CALL,
    /** Another motor, model or person, until winding begins. */
    CHANGE_ASSIGNMENT,
    FIRST_TURN,
    LAST_TURN,
    BROKE,
    /** Everyone unhurt, both ends found. */
    PEOPLE_SAFE,
    SAY_WHERE,
    TAKE_SPARE,
    MORE_TURNS,
    SOME_OFF,
    RUN_BACK,
    SAY_TURNS_ON,
    RELEASED,
    NOT_RELEASED,
    LANDED,
    STILL_FLYING,
    TYPE_WATCH,
    JUDGE_WATCH,
    ANNOUNCE,
    CLOSE,
    SIGN,
    REOPEN,
    PROTEST,
    ABANDON,
    DECLARE_VOID,
    STOP_THE_HALL
}
