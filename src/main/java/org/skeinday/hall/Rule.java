package org.skeinday.hall;

/** What a winding place has to keep, each with its reason. */
public enum Rule {
    MODEL_TOO_NEAR("A motor that breaks whips about and past both ends; a model in its way is broken too."),
    PERSON_TOO_NEAR("A parting motor lashes sideways; beside it, people stay out of its reach, eyes covered."),
    IN_LINE_WITH_MOUNT("A parting motor recoils towards its mount and past it: nobody stands there."),
    IN_LINE_WITH_WINDER("A parting motor recoils towards the winder and past it: nobody else stands there."),
    READER_TOO_NEAR("The reader looks at the needle, not at the motor, and does not see it part."),
    READER_BEHIND_METER("What comes off the meter flies straight back: the reader stands beside the line."),
    LANES_TOO_NEAR("Who winds on one lane must be out of the other motor's reach."),
    ZONES_OVERLAP("What flies past one lane's end must not meet the other lane's people."),
    LANE_TOO_SHORT("The motor cannot be stretched as far as planned: distance and target are both cut."),
    NO_STANDING_ROOM(
            "The winder's feet stand half a metre past full stretch, and nobody winds with the back to a wall.");

    private final String reason;

    Rule(String reason) {
        this.reason = reason;
    }

    public String reason() {
        return reason;
    }

    /** Whether it is about the lane's length, not about what stands around. */
    public boolean isAboutLength() {
        return this == LANE_TOO_SHORT || this == NO_STANDING_ROOM;
    }
}
