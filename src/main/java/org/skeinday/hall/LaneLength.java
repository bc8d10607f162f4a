package org.skeinday.hall;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;

/** The lane against today's longest stretch, and the room to stand behind its winder end. */
record LaneLength(
        Separation separation, WindingPlace place, @Nullable Length longestStretch) {
    void judge(List<Shortfall> findings, List<String> unknown) {
        Length lane = place.lane().length();
        if (longestStretch == null) {
            unknown.add("today's longest stretch is not known");
        } else {
            add(Rule.LANE_TOO_SHORT, lane, longestStretch, findings);
        }
        Length past = place.pastWinder();
        if (past == null) {
            unknown.add("the room past the winder end is not measured");
        } else {
            Length room = Length.ofMillimetres(lane.millimetres() + past.millimetres());
            add(Rule.NO_STANDING_ROOM, room, needed(lane), findings);
        }
    }

    /** A lane that is too short is wound to its end and no further. */
    private Length needed(Length lane) {
        double stretch = longestStretch == null
                ? lane.millimetres()
                : Math.min(longestStretch.millimetres(), lane.millimetres());
        return Length.ofMillimetres(stretch + separation.standing().millimetres());
    }

    private void add(Rule rule, Length is, Length least, List<Shortfall> findings) {
        double shortBy = least.millimetres() - is.millimetres();
        if (shortBy > Separation.SAME_MM) {
            findings.add(new Shortfall(
                    rule, place.lane().name(), "", "today's motors", Length.ofMillimetres(shortBy), is, least));
        }
    }
}
