package org.skeinday.prepare.web;

import java.util.List;

/** Where Prepare leads beside its lists. */
final class Links {
    static final List<OverviewView.Link> MORE = List.of(
            new OverviewView.Link(
                    "/prepare/rules",
                    "Flight rules",
                    "Repeats, models held by the building, collisions, ties, last call: where the rules name them."),
            new OverviewView.Link(
                    "/checks/lists", "Checklists", "One for each pause, worded as you like; critical items first."),
            new OverviewView.Link("/hall", "Hall", "The winding place by tape: what is too close, drawn from above."),
            new OverviewView.Link("/prepare/notes", "Trim and repairs", "What was changed on each model."),
            new OverviewView.Link("/prepare/flights", "Flights", "Practice and trim flights, all of them."),
            new OverviewView.Link(
                    "/making", "Make motors", "Strip to cut for a wanted loop, what it weighs, pairs that match."),
            new OverviewView.Link(
                    "/desk",
                    "Chief's desk",
                    "Hosting: doubts, times to sign, protests, what came late or was corrected."),
            new OverviewView.Link(
                    "/audit",
                    "Audit",
                    "Every change of rules, windows, entries, rights, results and signatures, by whom and why."),
            new OverviewView.Link("/inspection", "Inspection", "Mass as inspected, margin under the limit, handed in."),
            new OverviewView.Link("/devices", "Devices", "Who joined; lend the laptop, a new PIN, stop the program."),
            new OverviewView.Link("/people", "People", "Whose names are kept; erase one for good."),
            new OverviewView.Link(
                    "/import",
                    "Bring files in",
                    "Spreadsheets of a team: looked through first, then taken whole. By the coach."),
            new OverviewView.Link(
                    "/import/history",
                    "Bring a history in",
                    "A spreadsheet of your own columns, which you explain. By the coach."),
            new OverviewView.Link(
                    "/export", "Take files out", "An event, a season or everything: CSV, workbook, JSON."));

    static final List<OverviewView.Link> PRINTED = List.of(
            new OverviewView.Link("/guide", "Guide", "What each page is for, on one sheet."),
            new OverviewView.Link("/cards", "Attempt cards", "One for each attempt: the day on paper."),
            new OverviewView.Link("/checks/print", "Checklists", "All of them, in the revision in force."),
            new OverviewView.Link("/tags", "Motor tags", "With a code that opens the motor."),
            new OverviewView.Link("/log", "Flight log", "As the rules ask for it, and what it still lacks."),
            new OverviewView.Link("/key-in", "Key in", "Paper cards into the record, by keyboard alone."));

    private Links() {}
}
