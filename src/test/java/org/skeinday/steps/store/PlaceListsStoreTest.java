package org.skeinday.steps.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.ContestFacts;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Json;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ChecklistRevised;
import org.skeinday.steps.Checklists;
import org.skeinday.steps.Moment;
import org.skeinday.steps.RunBegun;
import org.skeinday.steps.Step;
import org.skeinday.steps.Ticked;

/** Records made before each winding place had a list of its own: the day's list was that of the place at work. */
class PlaceListsStoreTest {
    private static final String PULL = "mount-pulled";

    @TempDir
    Path folder;

    private Database database;
    private Tx tx;
    private final List<FactKind> kinds = new ArrayList<>();

    @BeforeEach
    void open() {
        database = Database.open(folder, "places");
        tx = database.writing().tx();
        kinds.addAll(ContestFacts.kinds());
        kinds.addAll(StepsFacts.kinds());
        take("station.added", station("t", "Table", "wire meter 1"));
    }

    @AfterEach
    void close() {
        database.close();
    }

    private void take(String kind, Object fact) {
        kinds.stream()
                .filter(k -> k.kind().equals(kind))
                .findFirst()
                .orElseThrow()
                .apply()
                .apply(tx, 1, Json.MAPPER.valueToTree(fact));
    }

    private static StationAdded station(String id, String name, @Nullable String meter) {
        return new StationAdded(
                id, name, "table", null, null, 10.0, null, "none", false, meter, null, null, null, null, null, null,
                null, null, null, null, null, null, null, null, null);
    }

    /** As a record of before has it: the list is about the day. */
    private void answered(String tick) {
        Checklist list = ListStore.at(tx, Moment.WINDING_PLACE);
        String run = RunStore.id(list.id(), "e");
        take("checklist.revised", new ChecklistRevised(Checklists.rows(list), 1, null));
        take("run.begun", new RunBegun(run, list.id(), list.revision(), "e", 1, null, "laptop"));
        take("step.ticked", new Ticked(tick, run, PULL, "15", list.revision(), 2, null, "laptop"));
    }

    private boolean isPulled(String station) {
        return RunStore.of(tx, Moment.WINDING_PLACE, PlaceLists.subject("e", station)).done().stream()
                .map(Step::id)
                .anyMatch(PULL::equals);
    }

    @Test
    void what_was_answered_for_the_day_is_of_the_place_that_was_at_work_then_whichever_is_later() {
        answered("1");
        assertEquals(List.of(true, false), List.of(isPulled("t"), isPulled("a")));
        take("station.added", station("a", "A post", "dial 2"));
        assertEquals(List.of(true, false), List.of(isPulled("t"), isPulled("a")), "another place is at work now");
        Checklist list = ListStore.at(tx, Moment.WINDING_PLACE);
        assertEquals("e~t", PlaceLists.named(tx, list, "e"), "a page of before goes on with its list");
    }

    @Test
    void a_day_without_a_winding_place_keeps_its_list() {
        take("station.removed", new org.skeinday.platform.record.Removed("t"));
        answered("1");
        Checklist list = ListStore.at(tx, Moment.WINDING_PLACE);
        assertEquals("e", PlaceLists.named(tx, list, "e"));
        assertEquals(List.of("e"), PlaceLists.all(tx, "e"));
        take("station.added", station("a", "A post", null));
        assertEquals(true, isPulled("a"), "the one that it was is prepared now");
    }
}
