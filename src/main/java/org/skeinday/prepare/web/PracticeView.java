package org.skeinday.prepare.web;

import java.util.List;

/**
 * Practice, in finished words.
 *
 * @param event the practice night, empty when none was begun
 * @param today whether it is today's
 * @param confirming whether numbers were just confirmed
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
        boolean confirming,
        List<Flight> flights,
        List<Note> notes) {
    /**
     * A flight.
     *
     * @param open what of it waits to be confirmed: what was offered together, each doubt alone
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
            List<Told> open) {}

    /** Numbers that one word confirms. @param numbers as a form sends them back */
    public record Told(String words, List<String> numbers) {}

    /** Flights with numbers that wait to be confirmed. */
    public List<Flight> open() {
        return flights.stream().filter(f -> !f.open().isEmpty()).toList();
    }

    /** A trim or repair. */
    public record Note(String model, String when, String words) {}
}
