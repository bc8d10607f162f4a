package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HashMap;
import java.util.Map;
import org.skeinday.platform.db.Database;

/**
 * What a data folder says of itself in a file beside the journal, so that it is never taken for a fresh one.
 *
 * @param folder 32 hexadecimal digits, the same in people.json and in every backup; empty in one of an older program
 * @param line 32 hexadecimal digits, new with each restore: backups of another line say nothing about this journal
 * @param records so many lines the journal has at least; 0 before the first
 * @param head the hash of the last of those, empty for 0
 */
record FolderMark(String folder, String line, long records, String head) {
    static final String FILE = "skeinday-folder.txt";

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final FolderMark NONE = new FolderMark("", "", 0, "");

    /**
     * Touches nothing.
     *
     * @throws Damaged when the folder was in use and its journal is gone
     */
    static void refuseWithoutJournal(Path data) {
        boolean used = Files.exists(data.resolve(FILE)) || Files.exists(Database.file(data, ActStore.DATABASE));
        if (used && !Files.exists(data.resolve(Journal.FILE))) {
            throw new Damaged("record 1: " + data + " was in use, but its " + Journal.FILE
                    + " is missing. Put it back from a backup, or name another folder with --data.");
        }
    }

    /** What cannot be read in it is as if it were not there: the mark helps, and is no part of the record. */
    static FolderMark read(Path data) throws IOException {
        Path file = data.resolve(FILE);
        if (!Files.exists(file)) {
            return NONE;
        }
        Map<String, String> said = new HashMap<>();
        new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1)
                .lines()
                .forEach(row -> {
                    int colon = row.indexOf(": ");
                    if (colon > 0) {
                        said.put(
                                row.substring(0, colon),
                                row.substring(colon + 2).strip());
                    }
                });
        String records = matching(said, "records", "\\d{1,15}");
        String head = matching(said, "head", "[0-9a-f]{64}");
        return new FolderMark(
                matching(said, "folder", "[0-9a-f]{32}"),
                matching(said, "line", "[0-9a-f]{32}"),
                records.isEmpty() || head.isEmpty() ? 0 : Long.parseLong(records),
                head);
    }

    private static String matching(Map<String, String> said, String key, String form) {
        String value = said.getOrDefault(key, "");
        return value.matches(form) ? value : "";
    }

    void write(Path data) throws IOException {
        WholeFile.write(
                data.resolve(FILE),
                "Skeinday's data. journal.jsonl and people.json are the record: keep them.\n" + "folder: " + folder
                        + "\nline: " + line + "\nrecords: " + records + "\nhead: " + head + "\n");
    }

    static String newId() {
        return RandomHex.of(RANDOM);
    }

    /** The same folder and line with a journal that has come so far. */
    FolderMark at(long n, String hash) {
        return new FolderMark(folder, line, n, hash);
    }

    /** The same with what one of an older program lacks. @param id of the folder, as its people have it */
    FolderMark of(String id) {
        return new FolderMark(id, line.isEmpty() ? newId() : line, records, head);
    }
}
