package org.skeinday.platform.record;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;
import org.skeinday.platform.db.Tx;

/** A small real kind of act for the record's own tests: it keeps a text in a table of its own. */
final class NoteKind {
    record Note(String text) {}

    record NoteKept(String id, String text, long atMs) {}

    /** A person joins the crew: a name is needed from here on. */
    record Joined(String personId) {}

    private NoteKind() {}

    static final ActKind<Note> ACT = new ActKind<>("note.keep", Note.class, NoteKind::decide);

    static final FactKind FACT = FactKind.of("note.kept", NoteKept.class, NoteKind::apply);

    static Projection projection() {
        return new Projection(List.of(FACT, FactKind.of("crew.added", Joined.class, (tx, joined) -> {})));
    }

    private static Decision decide(Tx tx, ActContext context, Note note) {
        if (note.text().isBlank()) {
            return Decision.refused("text", "A note needs words");
        }
        var fact = new NoteKept(context.ownId(), note.text(), context.now().toEpochMilli());
        Map<String, String> names =
                note.text().startsWith("name ") ? Map.of(fact.id(), note.text().substring(5)) : Map.of();
        if (note.text().startsWith("crew ")) {
            Map<String, String> person = Map.of(fact.id(), note.text().substring(5));
            return new Decision.Decided(
                    List.of(Fact.of("note.kept", fact), Fact.of("crew.added", new Joined(fact.id()))),
                    person,
                    Set.of("notes"));
        }
        return new Decision.Decided(List.of(Fact.of("note.kept", fact)), names, Set.of("notes"));
    }

    private static void apply(Tx tx, NoteKept note) {
        if (note.text().equals("cannot be applied")) {
            throw new IllegalStateException("a fault of the program");
        }
        try {
            insert(tx, note);
        } catch (DataAccessException e) {
            if (hasTable(tx)) {
                throw e;
            }
            tx.sql().execute("create table note (id varchar(64) primary key, text varchar, at_ms bigint)");
            insert(tx, note); // the tests' table is made on the way: in H2 that commits, before anything is written
        }
    }

    private static void insert(Tx tx, NoteKept note) {
        tx.sql().execute("insert into note (id, text, at_ms) values (?, ?, ?)", note.id(), note.text(), note.atMs());
    }

    private static boolean hasTable(Tx tx) {
        return tx.sql().fetchExists(DSL.table("information_schema.tables"), DSL.condition("table_name = 'NOTE'"));
    }

    static List<String> texts(ActStore record) {
        return record.read(tx -> hasTable(tx)
                ? tx.sql()
                        .select(DSL.field("text", String.class))
                        .from("note")
                        .orderBy(DSL.field("id"))
                        .fetchInto(String.class)
                : List.of());
    }

    static Act act(int number, String text) {
        ObjectNode content = Json.MAPPER.createObjectNode().put("text", text);
        return new Act(String.format("%032x", number), "note.keep", "tablet", "", Instant.ofEpochMilli(0), content);
    }
}
