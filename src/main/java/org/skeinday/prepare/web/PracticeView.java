package org.skeinday.prepare.web;

import java.util.List;

/**
 * Practice, in finished words.
 *
 * @param event the practice night, empty when none was begun
 * @param today whether it is today's
 * @param insist unlikely numbers that are asked about, empty when none is
 * @param lacksMotor whether there is no motor that a flight could be with
 */
public record PracticeView(
        String event,
        boolean today,
        String saved,
        String problem,
        boolean lacksMotor,
        List<FormView.Field> fields,
        String insist,
        List<Flight> flights,
        List<Note> notes) {
    /**
     * A flight.
     *
     * @param offered what of it waits to be confirmed, in words; empty for nothing
     * @param numbers the same as a form sends it back
     */
    public record Flight(
            String id,
            String address,
            String when,
            String model,
            String motor,
            String turns,
            String time,
            String note,
            String offered,
            List<String> numbers) {}

    /** A trim or repair. */
    public record Note(String model, String when, String words) {}
}
