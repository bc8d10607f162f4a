package org.skeinday.prepare.web;

import java.util.List;

/**
 * Practice, in finished words.
 *
 * @param event the practice night, empty when none was begun
 * @param today whether it is today's
 * @param lacksMotor whether there is no motor that a flight could be with
 */
public record PracticeView(
        String event,
        boolean today,
        String saved,
        String problem,
        boolean lacksMotor,
        List<FormView.Field> fields,
        List<Flight> flights,
        List<Note> notes) {
    /** A flight. */
    public record Flight(
            String address, String when, String model, String motor, String turns, String time, String note) {}

    /** A trim or repair. */
    public record Note(String model, String when, String words) {}
}
