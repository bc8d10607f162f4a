package org.skeinday.prepare.web;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.ColumnMapping;
import org.skeinday.exchange.DayRows;
import org.skeinday.exchange.PlainSheet;
import org.skeinday.exchange.action.TakeHistory;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.NewIds;

/** A history that was kept elsewhere: a plain spreadsheet, what its columns mean, what would be taken, then all of it. */
public final class HistoryPages {
    /** What rows of a history are, in the order in which they are offered. */
    private static final List<String> FILES = List.of("flights.csv", "motors.csv", "batches.csv", "models.csv");

    private static final int PREVIEW = 5;
    private static final int MOST_COLUMNS = 60;

    private final PrepareContext desk;

    public HistoryPages(PrepareContext desk) {
        this.desk = desk;
    }

    public void register(Routes routes) {
        routes.get(
                "/import/history",
                Role.COACH,
                ctx -> desk.page().show(ctx, "Bring a history in", "prepare/history.jte", HistoryView.nothing("")));
        routes.postFiles("/import/history/open", Role.COACH, this::open);
        routes.postFiles("/import/history/look", Role.COACH, ctx -> look(ctx, ""));
        routes.postFiles("/import/history/take", Role.COACH, this::take);
    }

    private void fragment(Context ctx, HistoryView view) {
        desk.page().fragment(ctx, "prepare/_history.jte", view);
    }

    private void open(Context ctx) throws IOException {
        String file = file(ctx);
        UploadedFile uploaded = ctx.uploadedFile("files");
        if (uploaded == null || uploaded.filename().isEmpty()) {
            throw new Refusal(422, "Choose a spreadsheet first.");
        }
        PlainSheet sheet;
        try (InputStream in = uploaded.content()) {
            sheet = PlainSheet.of(uploaded.filename(), in.readAllBytes());
        }
        if (!sheet.errors().isEmpty() || sheet.header().size() > MOST_COLUMNS) {
            ctx.status(422);
            fragment(
                    ctx,
                    HistoryView.nothing(
                            sheet.errors().isEmpty()
                                    ? "There are more than " + MOST_COLUMNS + " columns: keep those that matter."
                                    : sheet.errors().get(0).text()));
            return;
        }
        ColumnMapping guess = ColumnMapping.guess(file, sheet.header());
        show(ctx, history(file, sheet.text(), guess.meanings(), Map.of()), sheet, "", false);
    }

    private static String file(Context ctx) {
        String file = RowForm.param(ctx, "file");
        if (!FILES.contains(file)) {
            throw new Refusal(422, "Rows of a history are one of " + String.join(", ", FILES) + ".");
        }
        return file;
    }

    private TakeHistory.History history(
            String file, String text, Map<Integer, ColumnMapping.Meaning> meanings, Map<String, String> same) {
        return new TakeHistory.History(file, text, meanings, same, desk.zone().getId());
    }

    /** As the form has it: a meaning for each place, and one value where no place means a column. */
    private TakeHistory.History typed(Context ctx, PlainSheet sheet) {
        String file = file(ctx);
        Set<String> known = DayRows.columns(file).stream().map(Column::name).collect(Collectors.toSet());
        Map<Integer, ColumnMapping.Meaning> meanings = new HashMap<>();
        for (int place = 0; place < sheet.header().size(); place++) {
            String meaning = RowForm.param(ctx, "meaning-" + place);
            if (known.contains(meaning)) {
                meanings.put(
                        place,
                        new ColumnMapping.Meaning(
                                meaning, RowForm.param(ctx, "unit-" + place).strip()));
            }
        }
        Set<String> meant =
                meanings.values().stream().map(ColumnMapping.Meaning::column).collect(Collectors.toSet());
        Map<String, String> same = new HashMap<>();
        known.stream().filter(column -> !meant.contains(column)).forEach(column -> {
            String value =
                    RowForm.param(ctx, "same-" + Fields.parameter(column)).strip();
            if (!value.isEmpty()) {
                same.put(column, value);
            }
        });
        return history(file, sheet.text(), meanings, same);
    }

    private static PlainSheet sheet(Context ctx) {
        PlainSheet sheet = PlainSheet.of("the spreadsheet", RowForm.param(ctx, "text"));
        if (!sheet.errors().isEmpty()) {
            throw Refusal.malformed("This form came without its spreadsheet. Choose the file again.");
        }
        return sheet;
    }

    private void look(Context ctx, String problem) {
        PlainSheet sheet = sheet(ctx);
        show(ctx, typed(ctx, sheet), sheet, problem, false);
    }

    private void take(Context ctx) {
        PlainSheet sheet = sheet(ctx);
        TakeHistory.History history = typed(ctx, sheet);
        ColumnMapping.Taken looked = checked(history);
        boolean repeated = desk.forms().told(ctx).isPresent(); // then the record has these rows by this very act
        if (!repeated && !looked.errors().isEmpty()) {
            ctx.status(422);
            show(ctx, history, sheet, "Nothing was taken.", false);
            return;
        }
        Answer answer = desk.forms().submit(ctx, "exchange.history", history, UnderWay.PATIENCE);
        if (answer instanceof Answer.NotYet) {
            new UnderWay(desk).tell(ctx, FormActs.number(ctx));
            return;
        }
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            fragment(
                    ctx,
                    new HistoryView(
                            history.file(),
                            "",
                            "",
                            true,
                            rows(looked.rows()) + " are in the record now.",
                            List.of(),
                            List.of(),
                            List.of(),
                            List.of(),
                            List.of()));
            return;
        }
        boolean told = !checked(history).errors().isEmpty(); // then the cells are named one by one
        show(ctx, history, sheet, "Nothing was taken." + (told ? "" : " " + words), false);
    }

    private static String rows(int n) {
        return n == 1 ? "1 row" : n + " rows";
    }

    private ColumnMapping.Taken checked(TakeHistory.History history) {
        Map<String, String> people = desk.record().people().names();
        return desk.record().read(tx -> TakeHistory.check(tx, history, people, new NewIds("looked")::next));
    }

    private void show(Context ctx, TakeHistory.History history, PlainSheet sheet, String problem, boolean taken) {
        ColumnMapping.Taken checked = checked(history);
        List<Column> known = DayRows.columns(history.file());
        Set<String> meant = history.meanings().values().stream()
                .map(ColumnMapping.Meaning::column)
                .collect(Collectors.toSet());
        List<String> head = known.stream()
                .map(Column::name)
                .filter(name -> meant.contains(name) || history.same().containsKey(name))
                .toList();
        List<String> wrong = CellError.told(checked.errors(), e -> words(e, sheet.header()));
        fragment(
                ctx,
                new HistoryView(
                        history.file(),
                        history.text(),
                        problem,
                        taken,
                        checked.errors().isEmpty()
                                ? rows(checked.rows()) + " can be taken in."
                                : checked.errors().size() + (checked.errors().size() == 1 ? " cell is" : " cells are")
                                        + " not right yet.",
                        columns(history, sheet, known),
                        known.stream()
                                .filter(c -> !meant.contains(c.name()))
                                .map(c -> new HistoryView.Same(
                                        c.name(), c.must(), history.same().getOrDefault(c.name(), "")))
                                .toList(),
                        wrong,
                        head,
                        history.mapping().preview(sheet.rows(), PREVIEW).stream()
                                .map(row -> head.stream()
                                        .map(name -> row.getOrDefault(name, ""))
                                        .toList())
                                .toList()));
    }

    private static List<HistoryView.Column> columns(TakeHistory.History history, PlainSheet sheet, List<Column> known) {
        List<HistoryView.Column> columns = new ArrayList<>();
        for (int place = 0; place < sheet.header().size(); place++) {
            ColumnMapping.Meaning meaning = history.meanings().getOrDefault(place, new ColumnMapping.Meaning("", ""));
            columns.add(new HistoryView.Column(
                    place,
                    sheet.header().get(place),
                    sheet.sample(place),
                    known.stream()
                            .map(c -> new HistoryView.Meaning(c.name(), c.name().equals(meaning.column())))
                            .toList(),
                    meaning.unit()));
        }
        return columns;
    }

    /** Where it is in their own spreadsheet, then what is wrong and what would be right. */
    private static String words(ColumnMapping.WrongCell wrong, List<String> header) {
        CellError error = wrong.error();
        String columns = wrong.places().stream()
                .filter(place -> place < header.size())
                .map(header::get)
                .collect(Collectors.joining(" and "));
        return "Row " + wrong.row()
                + (columns.isEmpty()
                        ? error.column().isEmpty() ? "" : ", " + error.column()
                        : ", column \"" + columns + "\"")
                + ": " + error.wrong() + "; " + error.right();
    }
}
