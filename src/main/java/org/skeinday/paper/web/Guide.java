package org.skeinday.paper.web;

import java.util.List;
import org.skeinday.platform.http.PageHelp;

/** The help of every page, in the order in which a day meets them. */
public final class Guide {
    public static final List<PageHelp> ALL = List.of(
            help(
                    "Prepare",
                    "/prepare",
                    "The list on the left leads from nothing to a day; what comes next is filled.",
                    "Each form says in grey what an empty field means, and names a mistake beside its field.",
                    "Spreadsheets come in whole with Bring files in; nothing is taken until every cell is right.",
                    "Print cards and lists the evening before: the day goes on by paper when a battery does not."),
            help(
                    "Join",
                    "/join",
                    "Tablets and phones scan the code, say who uses them, and stay joined over restarts.",
                    "Viewers and helpers need nothing more; timekeepers and captains the coach's yes here, or today's code.",
                    "The code stays the same until the coach makes another on Devices, so it can hang on the wall.",
                    "A tablet that cannot reach this laptop finds the reasons under A tablet cannot join."),
            help(
                    "Devices",
                    "/devices",
                    "Everyone who joined, and who is here just now; ending a device takes its rights at once.",
                    "New codes there end the old ones at once; an ended device comes back only with a new one.",
                    "What a lost tablet still holds can be brought here as a file.",
                    "Lent, the laptop does what a captain may, until the coach's PIN takes it back."),
            help(
                    "Hall",
                    "/hall",
                    "Measure the winding place by tape; the page says what is too close and by how much.",
                    "The drawing is from above, with the mount to the left.",
                    "Distances can be set for each hall; the venue's rules and the supervising adult come first.",
                    "A change that makes the place wrong opens its item on Checks again."),
            help(
                    "Checks",
                    "/checks",
                    "The list of this pause stands first; several people may tick it at once.",
                    "A tap can be taken back for ten seconds, later it is corrected with a reason.",
                    "Start winding waits for what is critical at the winding place and before winding, the line last; for nothing else.",
                    "The supervising adult may answer for the rest, with name and reason; nobody answers for eyes and line."),
            help(
                    "Now",
                    "/",
                    "The next attempt: how long there is to start winding, which motor, who does what.",
                    "One press each: call, start winding, wound, released.",
                    "The latest start is summed back from the window's end by how long your own attempts took.",
                    "What has slipped stands on top, with one tap to a new plan.",
                    "Where outside help is not allowed it is quiet from the call until the attempt is closed."),
            help(
                    "Day",
                    "/day",
                    "When each attempt is prepared, wound, loaded and flown, so that the time in hand is as long as can be.",
                    "A new plan is proposed and shows what moves; it holds when somebody takes it.",
                    "Say who is away or which model must be mended, and a proposal follows.",
                    "What does not fit is named, with ways out that were checked."),
            help(
                    "Bench",
                    "/bench",
                    "Motors in the order in which attempts need them, each with the one thing to do now.",
                    "Waits run on the laptop's clock, over sleep and restarts; after a jump it asks what happened.",
                    "The code on a motor's tag opens its page in the phone's own camera app."),
            help(
                    "Winding",
                    "/winding",
                    "The reader presses the key of each mark that the needle crosses.",
                    "The winder hears at most one word, and the floor marks say where to stand.",
                    "Nothing asks for anything from the first crank turn to the release.",
                    "Who winds alone types three numbers afterwards.",
                    "If anyone says stop, run it back."),
            help(
                    "Timing",
                    "/timing",
                    "Press the large target at the release, and again when the model touches the floor.",
                    "The time is measured on this device; the network never enters it.",
                    "A mistaken press is taken back: Not released, or Still flying.",
                    "Touched and Held mark contacts without stopping the watch."),
            help(
                    "Result sheet",
                    "/results",
                    "Who leads and by what, for all or one division; dashed is what may still change.",
                    "Each time leads to its record: every reading, and how the time came about.",
                    "What is signed changes only when it is opened again, with a reason."),
            help(
                    "Audit",
                    "/audit",
                    "Every change of rules, windows, entries, rights, results and signatures: by whom, when and why.",
                    "Each says what it was before; nothing is changed without standing here."),
            help(
                    "Practice",
                    "/practice",
                    "One row for each flight; the last values are offered, the time is what is typed.",
                    "Practice flights give forecasts, fits and the flight log that rules may ask for."),
            help(
                    "Key in",
                    "/key-in",
                    "Paper cards into the record, field by field in the order of the card, by keyboard alone.",
                    "What is keyed in counts like what was tapped."),
            help(
                    "Evening",
                    "/evening",
                    "What happened, what it means and how sure that is; no evidence yet is an answer too.",
                    "Decide together whether a flight says something of model and motor; its official time stays.",
                    "Three lines for next time come up where the next event is prepared."),
            help(
                    "Take files out",
                    "/export",
                    "An event, a season or everything, for spreadsheets or programs; it comes in again where none of it is yet.",
                    "Files hold people's names: keep them as you keep the laptop."));

    private Guide() {}

    private static PageHelp help(String word, String path, String... sentences) {
        return new PageHelp(word, path, List.of(sentences));
    }
}
