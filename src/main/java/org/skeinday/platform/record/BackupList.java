package org.skeinday.platform.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
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
    private static final Comparator<BackupList> BY_AGE =
            Comparator.comparingLong(BackupList::records).thenComparing(BackupList::name);

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
        return mark.line().isEmpty()
                ? Optional.empty()
                : all(place).filter(list -> list.isOf(mark)).max(BY_AGE);
    }

    /**
     * The newest that was made since a backup was last put back, for a folder whose mark does not say of which line it is:
     * what was made before that is of a line that was left.
     */
    static Optional<BackupList> newestSinceRestore(Path data) throws IOException {
        String since = Backup.lastSetAside(data);
        return all(data.resolve(Backup.FOLDER))
                .filter(list -> list.name().compareTo(since) > 0)
                .max(BY_AGE);
    }

    /**
     * The backups in a place, the newest of this folder's line last: by how far they have come, since a clock may be set
     * back, then by the clock. Before them all others, by the clock alone.
     */
    static List<Path> inOrder(Path place, FolderMark mark) throws IOException {
        List<Path> all = new ArrayList<>(Backup.in(place));
        List<Path> own = all(place)
                .filter(list -> list.isOf(mark))
                .sorted(BY_AGE)
                .map(BackupList::backup)
                .toList();
        all.removeAll(own);
        all.addAll(own);
        return all;
    }

    /** Whether another folder's backups are made in the same place: that one sees to them. */
    static boolean isOfOther(Path backup, FolderMark mark) throws IOException {
        return readable(backup)
                .filter(list -> !list.folder().isEmpty() && !mark.folder().isEmpty())
                .filter(list -> !list.folder().equals(mark.folder()))
                .isPresent();
    }

    private static Stream<BackupList> all(Path place) throws IOException {
        List<BackupList> lists = new ArrayList<>();
        for (Path backup : Backup.in(place)) {
            readable(backup).ifPresent(lists::add);
        }
        return lists.stream();
    }

    private String name() {
        return backup.getFileName().toString();
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
