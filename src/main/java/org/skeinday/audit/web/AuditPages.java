package org.skeinday.audit.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.audit.AuditLine;
import org.skeinday.audit.AuditTopic;
import org.skeinday.audit.AuditTrail;
import org.skeinday.audit.store.AuditStore;
import org.skeinday.exchange.CsvText;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** Every change of rules, windows, entries, rights, results and signatures: for the chief to look through, and as a file. */
public final class AuditPages {
    private static final int LINES = 60;
    private static final String PATH = "/audit";
    private static final String NOTHING = "–";
    private static final List<String> HEADER = List.of(
            "record",
            "when",
            "who",
            "device",
            "role",
            "brought by",
            "of",
            "what",
            "done",
            "field",
            "before",
            "after",
            "reason");

    private final ActStore record;
    private final Page page;
    private final Clock clock;

    public AuditPages(ActStore record, Page page, Clock clock) {
        this.record = record;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        routes.get(PATH, Role.CAPTAIN, ctx -> page.show(ctx, "Audit", "audit/audit.jte", view(ctx)));
        routes.get("/audit.csv", Role.CAPTAIN, this::file);
    }

    private static Optional<AuditTopic> topic(Context ctx) {
        String asked = ctx.queryParam("of");
        return Stream.of(AuditTopic.values())
                .filter(t -> t.word().equals(asked))
                .findFirst();
    }

    private static List<AuditLine> lines(Tx tx, Optional<AuditTopic> topic) {
        return AuditTrail.of(AuditStore.rows(tx)).stream()
                .filter(line -> topic.isEmpty() || line.topic() == topic.get())
                .toList();
    }

    private AuditView view(Context ctx) {
        Optional<AuditTopic> topic = topic(ctx);
        return record.read(tx -> view(tx, topic, before(ctx)));
    }

    /** How many of the latest lines are passed over. */
    private static int before(Context ctx) {
        String asked = ctx.queryParam("after");
        return asked != null && asked.matches("\\d{1,6}") ? Integer.parseInt(asked) : 0;
    }

    private AuditView view(Tx tx, Optional<AuditTopic> topic, int passed) {
        List<AuditLine> all = new ArrayList<>(lines(tx, topic));
        Collections.reverse(all);
        var names = new AuditNames(tx, record.people()::name, clock.getZone());
        List<AuditView.Line> shown = new ArrayList<>();
        String day = "";
        for (AuditLine line : all.stream().skip(passed).limit(LINES).toList()) {
            String itsDay = names.day(line.atMs());
            shown.add(shown(names, line, itsDay.equals(day) ? "" : itsDay));
            day = itsDay;
        }
        String query = topic.map(t -> "?of=" + t.word()).orElse("");
        return new AuditView(
                finding(all.size(), topic),
                topics(topic),
                shown,
                query,
                passed + LINES < all.size() ? paged(query, passed + LINES) : "",
                passed > 0 ? paged(query, Math.max(0, passed - LINES)) : "");
    }

    private static String finding(int lines, Optional<AuditTopic> topic) {
        String of = topic.map(t -> " of " + t.word()).orElse("");
        return lines == 0 ? "No change" + of + " yet" : lines + (lines == 1 ? " change" : " changes") + of;
    }

    private static String paged(String query, int passed) {
        return PATH + query + (query.isEmpty() ? "?" : "&") + "after=" + passed;
    }

    private static List<AuditView.Topic> topics(Optional<AuditTopic> shown) {
        return Stream.concat(
                        Stream.of(new AuditView.Topic("All", PATH, shown.isEmpty())),
                        Stream.of(AuditTopic.values())
                                .map(t -> new AuditView.Topic(
                                        t.name().charAt(0) + t.word().substring(1),
                                        PATH + "?of=" + t.word(),
                                        shown.filter(t::equals).isPresent())))
                .toList();
    }

    private static AuditView.Line shown(AuditNames names, AuditLine line, String day) {
        String moment = names.moment(line.atMs());
        return new AuditView.Line(
                day,
                moment.substring(moment.indexOf(' ') + 1),
                names.who(line),
                names.about(line),
                names.path(line),
                line.words(),
                line.changes().stream()
                        .map(c -> new AuditView.Change(
                                c.field().label(),
                                c.before().isEmpty() ? NOTHING : names.value(c.field(), c.before()),
                                c.after().isEmpty() ? NOTHING : names.value(c.field(), c.after())))
                        .toList(),
                line.reason());
    }

    private void file(Context ctx) {
        Optional<AuditTopic> topic = topic(ctx);
        List<List<String>> rows = new ArrayList<>(List.of(HEADER));
        record.read(tx -> {
            var names = new AuditNames(tx, record.people()::name, clock.getZone());
            lines(tx, topic).forEach(line -> rows.addAll(rows(names, line)));
            return rows;
        });
        ctx.contentType("text/csv; charset=utf-8");
        ctx.header("Content-Disposition", "attachment; filename=\"audit.csv\"");
        ctx.result(CsvText.of(rows));
    }

    /** One row for each field that changed, one at least. */
    private static List<List<String>> rows(AuditNames names, AuditLine line) {
        List<AuditLine.Change> changes = line.changes();
        if (changes.isEmpty()) {
            return List.of(row(names, line, "", "", ""));
        }
        return changes.stream()
                .map(c -> row(
                        names,
                        line,
                        c.field().label(),
                        names.value(c.field(), c.before()),
                        names.value(c.field(), c.after())))
                .toList();
    }

    private static List<String> row(AuditNames names, AuditLine line, String field, String before, String after) {
        return List.of(
                String.valueOf(line.n()),
                names.moment(line.atMs()),
                names.person(line),
                line.device(),
                line.role(),
                line.broughtBy() == null ? "" : line.broughtBy(),
                line.topic().word(),
                names.about(line),
                line.words(),
                field,
                before,
                after,
                line.reason());
    }
}
