package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.BatchBand;
import org.skeinday.motor.Hold;
import org.skeinday.motor.HoldBleed;
import org.skeinday.motor.TorqueReading;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

class PicturesTest {
    private static final EveningReview EVENING = new Evening(9, 0, 0, 40, 1, 1, 0, 0.3).at(1);
    private static final List<Finding> FINDINGS = EVENING.findings(UnitSystem.METRIC);
    private static final FlightPictures FLIGHTS = new FlightPictures(EVENING.flights(), FINDINGS, UnitSystem.METRIC);

    private static Torque nmm(double torque) {
        return Torque.ofNewtonMillimetres(torque);
    }

    @Test
    void the_title_says_the_finding_and_else_that_there_is_none_yet() {
        Picture torque = FLIGHTS.timeAgainstLaunchTorque();
        assertTrue(torque.title().startsWith("With 1 mN·m more launch torque flights were "), torque.title());
        assertEquals("launch torque (mN·m)", torque.x().title());
        assertEquals("time (s)", torque.y().title());
        Picture use = FLIGHTS.timeByUse();
        assertTrue(use.title().startsWith("Flight time by use of the motor. No evidence yet that "), use.title());
        assertEquals(
                "Mean speed of each flight: nothing was noted yet",
                new FlightPictures(List.of(), FINDINGS, UnitSystem.METRIC)
                        .meanSpeed()
                        .title());
        assertTrue(DayPictures.durations(EVENING.flights(), FINDINGS).title().startsWith("To wind took "));
        assertEquals(
                "Conditions over the day: nobody measured them yet",
                DayPictures.temperature(List.of()).title());
    }

    @Test
    void there_is_a_series_for_each_model_a_point_for_each_flight_and_a_row_for_each_point() {
        Picture picture = FLIGHTS.timeAgainstLaunchTorque();
        assertEquals(
                List.of("Model A", "Model B", "Model C"),
                picture.series().stream().map(Picture.Series::name).toList());
        assertEquals(
                45, picture.series().stream().mapToInt(s -> s.points().size()).sum());
        assertEquals(45, picture.rows().size());
        assertEquals(List.of("day", "model", "motor", "launch torque", "time", "for analysis"), picture.head());
        assertNull(picture.fit()); // one line through three models would mislead
    }

    @Test
    void of_one_model_the_fitted_line_is_drawn_through_the_valid_flights() {
        List<FlightRow> one = EVENING.flights().subList(0, 15);
        Picture.Fit fit = new FlightPictures(one, List.of(), UnitSystem.METRIC)
                .timeAgainstLaunchTorque()
                .fit();
        assertNotNull(fit);
        double slope = (fit.points().get(1).y() - fit.points().get(0).y())
                / (fit.points().get(1).x() - fit.points().get(0).x());
        double estimate =
                TimeAgainst.LAUNCH_TORQUE.ask(one, UnitSystem.METRIC).effect().value();
        assertEquals(estimate, slope, 1e-9);
    }

    @Test
    void winds_come_with_their_band_in_the_reader_s_units() {
        var read = new WindPictures.Read(
                "w1",
                "A-03 use 2",
                List.of(new TorqueReading(100, nmm(1)), new TorqueReading(2000, nmm(7.06155181422604))));
        Picture none = WindPictures.winds("Lot 7", List.of(read), null, UnitSystem.INCH);
        assertEquals("Winds of batch Lot 7: no band before three winds on one meter", none.title());
        assertEquals(1, none.series().get(0).points().get(1).y(), 1e-9);
        Picture band = WindPictures.winds(
                "Lot 7",
                List.of(read),
                turns -> turns < 1000 ? Optional.empty() : Optional.of(new BatchBand.Band(nmm(3), nmm(4), nmm(5), 3)),
                UnitSystem.METRIC);
        assertEquals(21, band.band().x().size()); // 1000 to 2000 in steps of 50
        assertEquals(3, band.band().low().get(0));
        assertEquals(5, band.band().high().get(20));
    }

    @Test
    void holds_are_drawn_over_the_logarithm_of_time_with_the_median_bleed() {
        List<Hold> holds = new ArrayList<>();
        for (int i = -1; i <= 1; i++) {
            holds.add(new Hold(0.02 + 0.001 * i, nmm(5)));
        }
        var read = new WindPictures.HoldRead(
                "w1", "A-03", List.of(new Hold.Reading(2, nmm(5.2)), new Hold.Reading(100, nmm(4.8))));
        Picture picture = WindPictures.holds("Lot 7", List.of(read), new HoldBleed(holds), UnitSystem.METRIC);
        assertEquals(
                "Torque of batch Lot 7 falls by 2.0 % for each tenfold time of holding (3 holds)", picture.title());
        assertEquals(2, picture.series().get(0).points().get(1).x(), 1e-12);
        assertEquals(
                List.of(false, true),
                picture.series().get(0).points().stream()
                        .map(Picture.Point::counted)
                        .toList());
        Picture.Point last = picture.fit().points().get(1);
        assertEquals(5 * (1 - 0.02 * Math.log10(600)), last.y(), 1e-9);
        Picture few = WindPictures.holds("Lot 7", List.of(), new HoldBleed(List.of()), UnitSystem.METRIC);
        assertNull(few.fit());
        assertEquals("Torque of batch Lot 7 while held: bleed not known before 3 holds", few.title());
    }

    @Test
    void a_table_row_of_another_length_is_refused() {
        var axis = new Axis("x", "");
        assertThrows(
                IllegalArgumentException.class,
                () -> new Picture("t", axis, axis, List.of(), null, null, List.of("a", "b"), List.of(List.of("a"))));
    }
}
