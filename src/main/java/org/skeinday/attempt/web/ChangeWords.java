package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.RulesChanged;
import org.skeinday.contest.WindowMoved;
import org.skeinday.contest.store.ChangesStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Tx;

/** What was changed of rules and windows after a flight was official: for the sheet, the wall and the record. */
public final class ChangeWords {
    private ChangeWords() {}

    /** One sentence for each change, the first one first. */
    public static List<String> ofEvent(Tx tx, EventAdded event, ZoneId zone) {
        return Stream.concat(
                        ChangesStore.ofRules(tx, event.id()).stream().map(change -> rules(change, zone)),
                        ChangesStore.ofWindows(tx, event.id()).stream().map(move -> window(tx, move, zone)))
                .toList();
    }

    private static String rules(RulesChanged change, ZoneId zone) {
        return "Rules changed at " + PageWords.clock(change.atMs(), zone) + ": " + change.changed() + ". "
                + sentence(change.reason()) + " " + change.moved();
    }

    private static String window(Tx tx, WindowMoved move, ZoneId zone) {
        String entry = move.entryId();
        return "Window of "
                + (entry == null
                        ? "all entries"
                        : EntryStore.find(tx, entry).map(EntryAdded::name).orElse("an entry that was removed"))
                + " moved at " + PageWords.clock(move.atMs(), zone) + ": " + moved(move, zone);
    }

    /** From when to when, why, and what that changes. */
    static String moved(WindowMoved move, ZoneId zone) {
        return span(move.opensBeforeMs(), move.closesBeforeMs(), zone) + " → "
                + span(move.opensAtMs(), move.closesAtMs(), zone) + ". " + sentence(move.reason())
                + " No verdict changes.";
    }

    private static String span(long fromMs, long toMs, ZoneId zone) {
        return PageWords.clock(fromMs, zone) + "–" + PageWords.clock(toMs, zone);
    }

    private static String sentence(String words) {
        return words.endsWith(".") ? words : words + ".";
    }

    /** The last change of the rules, short, for the wall; empty where there was none. */
    static Optional<String> last(Tx tx, EventAdded event, ZoneId zone) {
        List<RulesChanged> all = ChangesStore.ofRules(tx, event.id());
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of(all.get(all.size() - 1))
                        .map(change ->
                                "Rules changed at " + PageWords.clock(change.atMs(), zone) + ": " + change.reason());
    }
}
