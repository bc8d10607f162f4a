package org.skeinday.prepare.web;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.FileText;
import org.skeinday.exchange.Unpacked;
import org.skeinday.exchange.action.ImportFiles;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.NewIds;

/** A team's spreadsheets in, looked through first and taken whole. */
public final class FilePages {
    private final PrepareContext desk;
    private final UnderWay underWay;

    public FilePages(PrepareContext desk) {
        this.desk = desk;
        this.underWay = new UnderWay(desk);
    }

    public void register(Routes routes) {
        routes.get(
                "/import",
                Role.COACH,
                ctx -> desk.page()
                        .show(
                                ctx,
                                "Bring files in",
                                "prepare/import.jte",
                                new ImportView("", List.of(), List.of(), List.copyOf(DayFiles.known()))));
        routes.postFiles("/import/look", Role.COACH, this::look);
        underWay.register(routes);
        routes.postFiles("/import/take", Role.COACH, this::take);
    }

    private ImportFiles.Files files(Context ctx) throws IOException {
        Map<String, String> texts = new TreeMap<>();
        for (UploadedFile file : ctx.uploadedFiles("files")) {
            try (InputStream in = file.content()) {
                byte[] bytes = in.readAllBytes();
                String name = file.filename().toLowerCase(Locale.ROOT);
                if (Unpacked.isOne(name)) {
                    texts.putAll(unpacked(file.filename(), bytes));
                } else if (bytes.length > 0 || !name.isEmpty()) {
                    texts.put(name, FileText.decode(bytes));
                }
            }
        }
        if (texts.isEmpty()) {
            throw new Refusal(422, "Choose one or more files first.");
        }
        return new ImportFiles.Files(texts, desk.zone().getId(), 0);
    }

    private static Map<String, String> unpacked(String name, byte[] bytes) {
        Unpacked unpacked = Unpacked.of(name, bytes);
        if (!unpacked.errors().isEmpty()) {
            throw new Refusal(422, unpacked.errors().get(0).text());
        }
        return unpacked.texts();
    }

    private DayFiles.Read looked(ImportFiles.Files files) {
        return desk.record()
                .read(tx -> ImportFiles.check(tx, files, desk.record().people().names(), new NewIds("looked")::next));
    }

    private void look(Context ctx) throws IOException {
        DayFiles.Read read = looked(files(ctx));
        show(ctx, read, read.errors().isEmpty() ? "These files can be taken in." : "Nothing was taken.");
    }

    private void take(Context ctx) throws IOException {
        ImportFiles.Files files = files(ctx);
        DayFiles.Read read = looked(files);
        boolean repeated = desk.forms().told(ctx).isPresent(); // then the record has these rows by this very act
        if (!repeated && !read.errors().isEmpty()) {
            ctx.status(422);
            show(ctx, read, "Nothing was taken.");
            return;
        }
        Answer answer = desk.forms().submit(ctx, "exchange.import", files, UnderWay.PATIENCE);
        if (answer instanceof Answer.NotYet) {
            underWay.tell(ctx, FormActs.number(ctx));
            return;
        }
        String words = FormActs.words(ctx, answer);
        List<String> rows = rows(read);
        show(
                ctx,
                words.isEmpty() ? new ImportView(UnderWay.TAKEN, rows, List.of(), List.of()) : UnderWay.refused(words));
    }

    private void show(Context ctx, ImportView view) {
        desk.page().fragment(ctx, "prepare/_import.jte", view);
    }

    private static List<String> rows(DayFiles.Read read) {
        return read.rows().entrySet().stream()
                .map(e -> e.getKey() + ": " + e.getValue() + (e.getValue() == 1 ? " row" : " rows"))
                .toList();
    }

    private void show(Context ctx, DayFiles.Read read, String words) {
        show(ctx, new ImportView(words, rows(read), errors(ctx, read), List.of()));
    }

    /** Of one workbook or bundle alone they name it and its sheet. */
    private static List<String> errors(Context ctx, DayFiles.Read read) {
        List<String> names =
                ctx.uploadedFiles("files").stream().map(UploadedFile::filename).toList();
        boolean one = names.size() == 1 && Unpacked.isOne(names.get(0));
        return CellError.told(read.errors().stream()
                .map(e -> one ? e.inside(names.get(0)) : e)
                .toList());
    }
}
