package org.skeinday.exchange;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ChecklistRevised;
import org.skeinday.steps.ChecklistRow;
import org.skeinday.steps.Checklists;
import org.skeinday.steps.ItemAnswer;
import org.skeinday.steps.ListRules;
import org.skeinday.steps.Moment;
import org.skeinday.steps.Way;

/**
 * {@code checklists.csv}: one row for each item of each list, in the revision in force. A list comes in as a whole: as it is
 * in the record or as some program brought it, which changes nothing, or in a higher revision.
 */
final class ChecklistsFile implements DayFile {
    static final String NAME = "checklists.csv";

    private static final List<Column> COLUMNS = List.of(
            Column.text("list", 80).filled(),
            Column.plain("revision").filled(),
            Column.text("title", 120).filled(),
            Column.choice("moment", "", Moment.WORDS).filled(),
            Column.choice("way", Way.DO_THEN_CONFIRM.word(), Way.WORDS),
            Column.yesNo("aloud", "no"),
            Column.text("next", 300).filled(),
            Column.text("item", 80).filled(),
            Column.text("text", 120).filled(),
            Column.text("reason", 300).filled(),
            Column.yesNo("critical", "no"),
            Column.choice("answer", ItemAnswer.OK.word(), ItemAnswer.WORDS));

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        Integer revision = Numbers.whole(row, "revision", 1, 9999);
        var item = new ChecklistRow(
                row.text("list"),
                revision == null ? 1 : revision,
                row.text("title"),
                row.word("moment"),
                row.word("way"),
                row.yes("aloud"),
                row.text("next"),
                row.text("item"),
                row.text("text"),
                row.text("reason"),
                row.yes("critical"),
                row.word("answer"));
        if (row.isWrong()) {
            context.wrongLists.add(item.list());
        }
        context.listRows.add(Map.entry(row, item));
    }

    /** The rules of a list are asked once all its rows are in; what is wrong stands at its first row. */
    @Override
    public void finish(ImportContext context) {
        Map<String, Row> first = new LinkedHashMap<>();
        context.listRows.forEach(line -> first.putIfAbsent(line.getValue().list(), line.getKey()));
        first.forEach((list, row) -> {
            if (!context.wrongLists.contains(list)) {
                List<ChecklistRow> rows = context.listRows.stream()
                        .map(Map.Entry::getValue)
                        .filter(item -> item.list().equals(list))
                        .toList();
                take(list, rows, row, context);
            }
        });
        context.listRows.clear();
    }

    private static void take(String list, List<ChecklistRow> rows, Row row, ImportContext context) {
        try {
            Checklist read = Checklists.of(rows).get(0);
            Optional<Checklist> there = context.lists.inForce().stream()
                    .filter(l -> l.id().equals(list))
                    .findFirst();
            if (there.isEmpty() && !context.lists.inForce().isEmpty()) {
                row.error("list", "there is no list '" + list + "'", "write one of " + names(context));
                return;
            }
            if (there.filter(read::equals).isPresent() || context.lists.isShipped(read)) {
                return;
            }
            ListRules.refusesAnew(read)
                    .ifPresent(why -> row.error("item", why, "let 'line' be the last of the rows that are critical"));
            // The moment of the import is in its act; rows of a file have none.
            there.ifPresent(now -> refuse(now, read, row, context.lists.isCountedTwice(now)));
            context.take(row, "checklist.revised", () -> new ChecklistRevised(Checklists.rows(read), 0, null));
        } catch (IllegalArgumentException e) {
            row.said("", e);
        }
    }

    private static void refuse(Checklist now, Checklist read, Row row, boolean countedTwice) {
        if (read.moment() != now.moment()) {
            row.error(
                    "moment",
                    "a list stays at its pause",
                    "write " + now.moment().word());
        }
        if (read.revision() < now.revision() || read.revision() == now.revision() && !countedTwice) {
            row.error(
                    "revision",
                    "revision " + now.revision() + " of this list is in force and says something else",
                    "write " + (now.revision() + 1) + " on each of its rows");
        }
    }

    private static String names(ImportContext context) {
        return String.join(
                ", ", context.lists.inForce().stream().map(Checklist::id).toList());
    }

    @Override
    public void put(ExportContext book, Table table) {
        int place = 0;
        for (Checklist list : book.day().more().lists().inForce()) {
            for (ChecklistRow row : Checklists.rows(list)) {
                table.line(String.format("%04d", place++))
                        .put("list", row.list())
                        .put("revision", String.valueOf(row.revision()))
                        .put("title", row.title())
                        .put("moment", row.moment())
                        .put("way", row.way())
                        .put("aloud", row.aloud() ? "yes" : "no")
                        .put("next", row.next())
                        .put("item", row.item())
                        .put("text", row.text())
                        .put("reason", row.reason())
                        .put("critical", row.critical() ? "yes" : "no")
                        .put("answer", row.answer());
            }
        }
    }
}
