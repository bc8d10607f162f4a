package org.skeinday.prepare.web;

import java.util.List;
import org.skeinday.motor.MotorPlace;

/**
 * Inspection, in finished words.
 *
 * @param limit as typed, empty when there is none
 */
public record InspectionView(String event, String limit, boolean reinspection, List<Row> rows) {
    /**
     * One motor.
     *
     * @param declaredBy entries, empty when none has declared it
     * @param margin under the limit, empty when there is none
     * @param seen the motor's row as it is shown, as JSON
     */
    public record Row(
            String id,
            String tag,
            String declaredBy,
            String dry,
            String inspected,
            String margin,
            boolean over,
            MotorPlace place,
            String seen,
            String message) {}

    /** Where a motor can be, in the order in which the form offers it. */
    public List<MotorPlace> places() {
        return List.of(MotorPlace.values());
    }
}
