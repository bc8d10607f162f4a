package org.skeinday.platform.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.platform.db.Database;

/**
 * A copy of the database that was closed in good order when it held just the lines up to one that is known, with the sum
 * of its bytes. A start after a kill goes on from it where the journal still has that line. It holds no name: those are
 * in people.json.
 *
 * @param file of the database
 * @param sum SHA-256 of the file's bytes
 * @param end the journal's line that it holds last, and where in the journal that line ends
 */
record SealedCopy(Path file, String sum, JournalReader.End end) {
    private static final String PREFIX = "database-copy-";
    private static final String SEAL = ".seal";

    /** The newest of a folder; empty where there is none, or what is said of it cannot be read. */
    static Optional<SealedCopy> newest(Path folder) throws IOException {
        List<Path> seals = named(folder).stream()
                .filter(file -> file.toString().endsWith(SEAL))
                .sorted(Comparator.comparing(Path::getFileName))
                .toList();
        return seals.isEmpty() ? Optional.empty() : read(seals.get(seals.size() - 1));
    }

    private static Optional<SealedCopy> read(Path seal) throws IOException {
        try {
            JsonNode said = Json.MAPPER.readTree(Files.readAllBytes(seal));
            long n = said.path("n").asLong();
            Path file = file(seal.resolveSibling(""), n);
            var end = new JournalReader.End(
                    n, said.path("hash").asText(), said.path("bytes").asLong(), 0);
            return n > 0 && Files.exists(file) && seal.equals(sealOf(file))
                    ? Optional.of(new SealedCopy(file, said.path("sum").asText(), end))
                    : Optional.empty();
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    private static List<Path> named(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(file -> file.getFileName().toString().startsWith(PREFIX))
                    .toList();
        }
    }

    /** With leading zeros, so that names sort as their numbers do. */
    private static Path file(Path folder, long n) {
        return Database.file(folder, PREFIX + String.format("%012d", n));
    }

    private static Path sealOf(Path file) {
        return file.resolveSibling(file.getFileName() + SEAL);
    }

    /**
     * Copies the copy, which stays as it is.
     *
     * @return whether its bytes are the ones that were sealed
     */
    boolean copyTo(Path target) throws IOException {
        Files.copy(file, target, StandardCopyOption.REPLACE_EXISTING);
        return Seal.sum(target).equals(sum); // of what will be used, and not of what may change meanwhile
    }

    /**
     * Takes a database that was closed in good order as the folder's copy, in place of every other. Killed in between, a
     * file without its seal is left, which is no copy, beside the one before.
     *
     * @param end what it holds
     */
    static void take(Path folder, Path closed, JournalReader.End end) throws IOException {
        Path file = file(folder, end.n());
        Path seal = sealOf(file);
        Files.deleteIfExists(seal);
        Files.move(closed, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        force(file);
        String said = Json.MAPPER
                .createObjectNode()
                .put("n", end.n())
                .put("hash", end.hash())
                .put("bytes", end.length())
                .put("sum", Seal.sum(file))
                .toString();
        WholeFile.write(seal, said);
        for (Path other : named(folder)) {
            if (!other.equals(file) && !other.equals(seal)) {
                Files.delete(other);
            }
        }
    }

    private static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true); // a seal must never be on the disk before what it seals
        }
    }

    static void removeAll(Path folder) throws IOException {
        for (Path file : named(folder)) {
            Files.delete(file);
        }
    }
}
