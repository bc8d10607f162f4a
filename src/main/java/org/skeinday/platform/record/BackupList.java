package org.skeinday.platform.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What a backup says of itself: how far its journal goes, whose it is, and the sums of its files.
 *
 * @param folder and {@code line} as in {@link FolderMark}, empty in a backup of an older program
 * @param sums SHA-256 of each file by its name; empty in a backup of an older program
 */
record BackupList(Path backup, long records, String head, String folder, String line, Map<String, String> sums) {
    static final String FILE = "backup.json";

    private static final String SUM = "sum";

    /** @throws Damaged when there is none, or none that can be read */
    static BackupList read(Path backup) throws IOException {
        Path file = backup.resolve(FILE);
        if (!Files.exists(file)) {
            throw new Damaged("There is no " + FILE + " in " + backup
                    + ": it is no backup of Skeinday, or not all of it was copied. Choose another backup.");
        }
        JsonNode told = json(file);
        if (!told.path("records").isIntegralNumber() || !told.path("head").isTextual()) {
            throw new Damaged(file + " cannot be read: the backup's own list is in it. Choose another backup.");
        }
        boolean older = Stream.of(SUM, "folder", "line", "files").noneMatch(told::has);
        if (!older && !told.path(SUM).asText().equals(sum(told))) {
            throw new Damaged(file + " was altered: it does not fit its own sum. Choose another backup.");
        }
        Map<String, String> sums = new TreeMap<>();
        told.path("files")
                .properties()
                .forEach(e -> sums.put(e.getKey(), e.getValue().asText()));
        return new BackupList(
                backup,
                told.path("records").asLong(),
                told.path("head").asText(),
                told.path("folder").asText(""),
                told.path("line").asText(""),
                sums);
    }

    /** Over all but itself, in the order in which it stands there. */
    private static String sum(JsonNode list) {
        ObjectNode rest = list.deepCopy();
        rest.remove(SUM);
        return Sha.hex(rest.toString());
    }

    private static JsonNode json(Path file) throws IOException {
        try {
            return Json.MAPPER.readTree(Files.readAllBytes(file));
        } catch (JsonProcessingException e) {
            return Json.MAPPER.createObjectNode();
        }
    }

    /** The newest in a place that is of this folder and this line of it. */
    static Optional<BackupList> newestOf(Path place, FolderMark mark) throws IOException {
        List<Path> all = Backup.in(place);
        for (int i = all.size() - 1; i >= 0 && !mark.line().isEmpty(); i--) {
            Optional<BackupList> list = readable(all.get(i));
            if (list.isPresent() && list.get().isOf(mark)) {
                return list;
            }
        }
        return Optional.empty();
    }

    static boolean anyWithRecords(Path place) throws IOException {
        for (Path backup : Backup.in(place)) {
            if (readable(backup).map(BackupList::records).orElse(0L) > 0) {
                return true;
            }
        }
        return false;
    }

    private static Optional<BackupList> readable(Path backup) throws IOException {
        try {
            return Optional.of(read(backup));
        } catch (Damaged e) {
            return Optional.empty();
        }
    }

    private boolean isOf(FolderMark mark) {
        return folder.equals(mark.folder()) && line.equals(mark.line());
    }

    void write(Instant now) throws IOException {
        ObjectNode json = Json.MAPPER
                .createObjectNode()
                .put("records", records)
                .put("head", head)
                .put("atMs", now.toEpochMilli())
                .put("folder", folder)
                .put("line", line);
        ObjectNode files = json.putObject("files");
        sums.forEach(files::put);
        WholeFile.write(backup.resolve(FILE), json.put(SUM, sum(json)).toString());
    }
}
