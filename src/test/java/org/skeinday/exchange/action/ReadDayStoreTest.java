package org.skeinday.exchange.action;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.jooq.ExecuteListener;
import org.jooq.impl.DSL;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.exchange.Day;
import org.skeinday.platform.db.Database;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.store.RecordedSeason;

/** The whole record is read for an import, a row of Prepare and an export: its cost must not grow with the season. */
class ReadDayStoreTest {
    @TempDir
    Path folder;

    private Database database;
    private Tx tx;
    private RecordedSeason season;

    @BeforeEach
    void open() {
        database = Database.open(folder, "day");
        tx = database.writing().tx();
        season = new RecordedSeason(tx, 11);
    }

    @AfterEach
    void close() {
        database.close();
    }

    private int statements() {
        AtomicInteger statements = new AtomicInteger();
        var counted = tx.sql().configuration().derive(ExecuteListener.onStart(c -> statements.incrementAndGet()));
        ExchangeDayReader.all(new Tx(DSL.using(counted)), Map.of());
        return statements.get();
    }

    @Test
    void a_season_is_read_with_as_many_statements_as_an_empty_record() {
        int empty = statements();
        season.fill(65, 4);
        assertEquals(empty, statements());
        assertTrue(empty <= 38, empty + " statements");
    }

    @Test
    void watches_and_readings_of_all_attempts_come_as_those_of_each_do() {
        season.fill(45, 0);
        Day day = ExchangeDayReader.all(tx, Map.of());
        List<ReadingTaken> readings = day.attempts().stream()
                .flatMap(a -> WatchStore.allReadings(tx, a.id()).stream())
                .toList();
        assertTrue(readings.size() >= 90, readings.size() + " readings");
        assertEquals(readings, day.readings());
        assertEquals(
                day.attempts().stream()
                        .flatMap(a -> WatchStore.watches(tx, a.id()).stream())
                        .toList(),
                day.watches());
    }
}
