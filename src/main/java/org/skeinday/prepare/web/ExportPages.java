package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.exchange.Bundle;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.DayPart;
import org.skeinday.exchange.RecordTables;
import org.skeinday.exchange.XlsxBook;
import org.skeinday.exchange.action.ExchangeDayReader;
import org.skeinday.platform.db.TableContents;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.review.Season;

/** Everything out again, an event, a season or all of it: as CSV files, a workbook, a JSON bundle; and the bare tables. */
public final class ExportPages {
    private final PrepareContext desk;

    public ExportPages(PrepareContext desk) {
        this.desk = desk;
    }

    /** @param about in words @param texts by file name */
    private record Part(String about, Map<String, String> texts) {}

    public void register(Routes routes) {
        routes.get(
                "/export", Role.CAPTAIN, ctx -> desk.page().show(ctx, "Take files out", "prepare/export.jte", view()));
        routes.advice(
                "/export.zip",
                Role.CAPTAIN,
                ctx -> zipped(ctx, "skeinday", part(ctx).texts()));
        routes.advice(
                "/export.xlsx",
                Role.CAPTAIN,
                ctx -> workbook(ctx, "skeinday", part(ctx).texts()));
        routes.advice("/export.json", Role.CAPTAIN, this::bundle);
        routes.get("/bundle.schema.json", Role.CAPTAIN, ctx -> {
            ctx.contentType("application/schema+json");
            ctx.result(Bundle.schema());
        });
        routes.advice("/tables.zip", Role.COACH, ctx -> zipped(ctx, "skeinday-tables", tables()));
        routes.advice("/tables.xlsx", Role.COACH, ctx -> workbook(ctx, "skeinday-tables", tables()));
    }

    private ExportView view() {
        Day day = desk.day();
        List<ExportView.Row> rows = new ArrayList<>();
        rows.add(new ExportView.Row("Everything", ""));
        seasons(day).forEach(s -> rows.add(new ExportView.Row("Season " + s.words(), "?season=" + s.first())));
        List<EventAdded> events = new ArrayList<>(day.events());
        Collections.reverse(events);
        events.forEach(e -> rows.add(new ExportView.Row(e.name() + ", " + e.day(), "?event=" + e.id())));
        return new ExportView(rows);
    }

    /** The last first. */
    private List<Season> seasons(Day day) {
        var first = new TreeSet<LocalDate>(Collections.reverseOrder());
        day.events().forEach(e -> first.add(Season.of(LocalDate.parse(e.day())).first()));
        day.flights()
                .forEach(f -> first.add(
                        Season.of(LocalDate.ofInstant(java.time.Instant.ofEpochMilli(f.flownAtMs()), desk.zone()))
                                .first()));
        return first.stream().map(Season::new).toList();
    }

    private Part part(Context ctx) {
        return desk.record().read(tx -> {
            Day day = ExchangeDayReader.all(tx, desk.record().people().names());
            return part(day, MotorUseStore.all(tx), ctx.queryParam("event"), ctx.queryParam("season"));
        });
    }

    private Part part(Day day, MotorUses uses, @Nullable String event, @Nullable String season) {
        if (event != null) {
            EventAdded one = day.events().stream()
                    .filter(e -> e.id().equals(event))
                    .findFirst()
                    .orElseThrow(() -> Refusal.notFound("There is no such event. Was it removed in Prepare?"));
            return written(one.name(), DayPart.ofEvent(day, uses, event, desk.zone()));
        }
        if (season != null) {
            Season one = Season.of(parsed(season));
            return written(DayPart.words(one), DayPart.ofSeason(day, uses, one, desk.zone()));
        }
        return written(DayPart.ALL, DayPart.whole(day, uses, desk.zone()));
    }

    private static LocalDate parsed(String day) {
        try {
            return LocalDate.parse(day);
        } catch (DateTimeParseException e) {
            throw new Refusal(422, "'" + day + "' is no day; write it as 2026-09-01.");
        }
    }

    private Part written(String about, Day day) {
        return new Part(about, DayFiles.write(day, desk.zone()).texts());
    }

    private Map<String, String> tables() {
        return desk.record()
                .read(tx -> RecordTables.write(
                        TableContents.texts(tx), desk.record().people().names()));
    }

    private void bundle(Context ctx) {
        Part part = part(ctx);
        ctx.contentType("application/json");
        named(ctx, "skeinday.json");
        ctx.result(Bundle.write(part.about(), part.texts()));
    }

    private static void workbook(Context ctx, String name, Map<String, String> texts) {
        ctx.contentType("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
        named(ctx, name + ".xlsx");
        ctx.result(XlsxBook.write(texts));
    }

    private static void zipped(Context ctx, String name, Map<String, String> texts) throws IOException {
        var bytes = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> file : texts.entrySet()) {
                zip.putNextEntry(new ZipEntry(file.getKey()));
                zip.write(file.getValue().getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        }
        ctx.contentType("application/zip");
        named(ctx, name + ".zip");
        ctx.result(bytes.toByteArray());
    }

    private static void named(Context ctx, String file) {
        ctx.header("Content-Disposition", "attachment; filename=\"" + file + "\"");
    }
}
