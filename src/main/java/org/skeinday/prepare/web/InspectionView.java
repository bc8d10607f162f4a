package org.skeinday.prepare.web;

import java.util.List;

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
     * @param place team, in or back
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
            String place,
            String seen,
            String message) {}
}
