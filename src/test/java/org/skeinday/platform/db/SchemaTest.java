package org.skeinday.platform.db;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.jooq.impl.DSL;
import org.junit.jupiter.api.Test;
import org.skeinday.platform.db.schema.DefaultSchema;

/** The tables that the program makes are those that its statements were generated from. */
class SchemaTest {
    private static final String OF_A_ROOM = "table_schema = 'PUBLIC' and table_name <> 'SCHEMA_MADE'";

    @Test
    void every_file_of_tables_belongs_to_a_room_and_every_room_has_its_file() throws Exception {
        try (Stream<Path> files = Files.list(Path.of("migrations"))) {
            assertEquals(
                    Schema.ROOMS.stream().map(room -> room + ".sql").sorted().toList(),
                    files.map(file -> file.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void a_new_database_has_every_column_that_statements_were_generated_for_and_no_other() {
        try (Database database = Database.scratch("schema")) {
            int columns = 0;
            for (var table : DefaultSchema.DEFAULT_SCHEMA.getTables()) {
                database.read(tx -> tx.sql().selectFrom(table).fetch()); // names each column
                columns += table.fields().length;
            }
            int made = database.read(
                    tx -> tx.sql().fetchCount(DSL.table("information_schema.columns"), DSL.condition(OF_A_ROOM)));
            assertEquals(columns, made);
        }
    }
}
