package org.skeinday.audit.store;

import static org.skeinday.platform.db.schema.Tables.AUDIT_ROW;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.skeinday.audit.AuditRow;
import org.skeinday.audit.AuditedKind;
import org.skeinday.audit.AuditedKinds;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AuditRowRecord;
import org.skeinday.platform.record.FactWritten;
import org.skeinday.platform.record.Json;

/** Keeps of every line of the record what the audit tells of it. */
public final class AuditStore {
    private static final TypeReference<Map<String, String>> SAID = new TypeReference<>() {};

    private AuditStore() {}

    /** A row as the table has it. */
    public record Kept(
            long n,
            int place,
            long atMs,
            String device,
            String personId,
            @Nullable String broughtBy,
            String kind,
            String said) {}

    /** Beside each fact as it is applied, living and replaying. */
    public static void note(Tx tx, FactWritten fact) {
        AuditedKind kind = AuditedKinds.ALL.get(fact.kind());
        if (kind != null) {
            Map<String, String> said = new TreeMap<>();
            for (String field : kind.kept()) {
                String text = fact.text(field);
                if (text != null && kind.tells(field, text)) {
                    said.put(field, text);
                }
            }
            Rows.into(AUDIT_ROW)
                    .accept(
                            tx,
                            new Kept(
                                    fact.n(),
                                    fact.place(),
                                    fact.atMs(),
                                    fact.device(),
                                    fact.person(),
                                    fact.broughtBy(),
                                    fact.kind(),
                                    Json.MAPPER.valueToTree(said).toString()));
        }
    }

    /** All of them, in the order of the record. */
    public static List<AuditRow> rows(Tx tx) {
        return tx.sql()
                .selectFrom(AUDIT_ROW)
                .orderBy(AUDIT_ROW.N, AUDIT_ROW.PLACE)
                .fetch(AuditStore::row);
    }

    private static AuditRow row(AuditRowRecord r) {
        try {
            return new AuditRow(
                    r.getN(),
                    r.getAtMs(),
                    r.getDevice(),
                    r.getPersonId(),
                    r.getBroughtBy(),
                    Objects.requireNonNull(AuditedKinds.ALL.get(r.getKind())),
                    Json.MAPPER.readValue(r.getSaid(), SAID));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A row of the audit cannot be read: record " + r.getN(), e);
        }
    }
}
