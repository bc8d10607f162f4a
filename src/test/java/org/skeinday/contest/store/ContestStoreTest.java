package org.skeinday.contest.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jooq.SQLDialect;
import org.jooq.impl.DSL;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorFacts;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Json;

class ContestStoreTest {
    private static final EventAdded DAY = new EventAdded(
            "e1",
            "Reed Day",
            "hosting",
            "2026-11-28",
            "Reed Hall",
            9000.0,
            "9 m",
            3,
            12,
            "sum",
            2,
            2,
            "middle",
            "longer",
            100,
            "down",
            true,
            0,
            10,
            null,
            null);
    private static final ModelAdded MODEL =
            new ModelAdded("m1", "Rail 1", "Reed", "cw", 241.3, "9.5 in", null, null, null);
    private static final MotorAdded MOTOR =
            new MotorAdded("r1", "R-01", "b1", "Reed", "cw", 469.9, "18.5 in", 1.6, "1.6 g", null, 2);

    @TempDir
    Path folder;

    private Connection connection;
    private Tx tx;

    @BeforeEach
    void migrated_file_database() throws Exception {
        connection = DriverManager.getConnection(
                "jdbc:h2:file:" + folder.resolve("day").toAbsolutePath(), "sa", "");
        tx = new Tx(DSL.using(connection, SQLDialect.H2));
        try (Stream<Path> files = Files.list(Path.of("migrations")).sorted()) {
            for (Path file : files.toList()) {
                connection.createStatement().execute(Files.readString(file));
            }
        }
    }

    @AfterEach
    void close() throws Exception {
        connection.close();
    }

    private void apply(String kind, Object body) {
        Stream.concat(ContestFacts.kinds().stream(), MotorFacts.kinds().stream())
                .filter(known -> known.kind().equals(kind))
                .findFirst()
                .orElseThrow()
                .apply()
                .apply(tx, 1, Json.MAPPER.valueToTree(Fact.of(kind, body).body()));
    }

    @Test
    void an_event_is_read_as_it_was_added() {
        apply("event.added", DAY);
        assertEquals(List.of(DAY), EventStore.all(tx));
        assertEquals(Optional.of(DAY), EventStore.find(tx, "e1"));
        assertTrue(EventStore.find(tx, "e2").isEmpty());
    }

    @Test
    void an_entry_has_the_models_that_were_given_to_it() {
        EntryAdded entry = new EntryAdded("n1", "e1", "Teal", "Reed", null, true, 2);
        apply("entry.added", entry);
        apply("model.added", MODEL);
        assertEquals(List.of(), ModelStore.ofEntry(tx, "n1"));
        apply("entry.model", new EntryModel("n1", "m1"));
        assertEquals(List.of(MODEL), ModelStore.ofEntry(tx, "n1"));
        assertEquals(List.of(entry), EntryStore.ofEvent(tx, "e1"));
        assertEquals(List.of(new EntryModel("n1", "m1")), ModelStore.entryModels(tx));
    }

    @Test
    void windows_come_in_the_order_in_which_they_open() {
        WindowAdded late = new WindowAdded("w1", "e1", "n1", 2000, 3000);
        WindowAdded early = new WindowAdded("w2", "e1", null, 1000, 2000);
        apply("window.added", late);
        apply("window.added", early);
        assertEquals(List.of(early, late), WindowStore.ofEvent(tx, "e1"));
    }

    @Test
    void crew_of_every_event_belongs_to_each() {
        CrewAdded everywhere = new CrewAdded("p1", "", "winds,reads", 4, null);
        CrewAdded elsewhere = new CrewAdded("p2", "e9", "times", null, null);
        apply("crew.added", everywhere);
        apply("crew.added", elsewhere);
        assertEquals(List.of(everywhere), CrewStore.ofEvent(tx, "e1"));
        assertEquals(List.of(everywhere, elsewhere), CrewStore.all(tx));
    }

    @Test
    void a_motor_keeps_what_was_typed() {
        BatchAdded batch = new BatchAdded("b1", "Lot A", 2.0, "2 mm", null, null, 44.0, "2026-09-01");
        apply("batch.added", batch);
        apply("motor.added", MOTOR);
        assertEquals(List.of(batch), BatchStore.all(tx));
        assertEquals(List.of(MOTOR), MotorStore.all(tx));
    }
}
