package org.skeinday.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.FileText;

/** A folder of a coach's files: read as it is, written whole or not at all. */
final class DayFolder {
    private DayFolder() {}

    /** Every CSV file of a folder, decoded, by its name in small letters: an unknown one is an error, not a gap. */
    static Map<String, String> read(Path dir) throws IOException {
        Map<String, String> texts = new TreeMap<>();
        for (Path file : list(dir)) {
            String name = name(file).toLowerCase(Locale.ROOT);
            if (name.endsWith(".csv") && !name.startsWith(".") && Files.isRegularFile(file)) {
                if (texts.put(name, FileText.decode(Files.readAllBytes(file))) != null) {
                    throw new IllegalArgumentException(
                            dir + " holds " + name + " twice, in capital and small letters; keep one");
                }
            }
        }
        return texts;
    }

    /**
     * Writes a folder aside, then puts it in the place of {@code dir}: at every moment there is the old one or the new
     * one, whole.
     *
     * @throws IllegalArgumentException when {@code dir} holds anything but such files
     */
    static void write(Path dir, Map<String, String> texts) throws IOException {
        Path target =
                Files.exists(dir) ? dir.toRealPath() : dir.toAbsolutePath().normalize();
        Path parent = target.getParent();
        if (parent == null) {
            throw new IllegalArgumentException(dir + " cannot be written as a whole; name a folder inside it");
        }
        Path aside = parent.resolve("." + name(target) + "-new");
        Path old = parent.resolve("." + name(target) + "-old");
        if (!Files.exists(target) && Files.exists(old)) {
            Files.move(old, target); // an export before this one was cut between the two moves
        }
        refuseOthers(dir, target);
        Files.createDirectories(parent);
        delete(aside);
        delete(old);
        try {
            fill(aside, texts);
            swap(target, aside, old);
        } finally {
            delete(aside);
        }
        delete(old);
    }

    private static void refuseOthers(Path dir, Path target) throws IOException {
        if (!Files.exists(target)) {
            return;
        }
        if (!Files.isDirectory(target)) {
            throw new IllegalArgumentException(dir + " is a file; name a folder for the files");
        }
        List<String> others = list(target).stream()
                .filter(file -> !DayFiles.known().contains(name(file)) || !Files.isRegularFile(file))
                .map(DayFolder::name)
                .toList();
        if (!others.isEmpty()) {
            throw new IllegalArgumentException(dir + " holds other files, for example " + others.get(0)
                    + ", so nothing was written; name a new or empty folder");
        }
    }

    private static void fill(Path folder, Map<String, String> texts) throws IOException {
        Files.createDirectory(folder);
        for (var text : texts.entrySet()) {
            try (FileChannel channel = FileChannel.open(
                    folder.resolve(text.getKey()), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
                ByteBuffer bytes = ByteBuffer.wrap(text.getValue().getBytes(StandardCharsets.UTF_8));
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            }
        }
    }

    private static void swap(Path target, Path aside, Path old) throws IOException {
        boolean replaces = Files.exists(target);
        if (replaces) {
            Files.move(target, old, StandardCopyOption.ATOMIC_MOVE);
        }
        try {
            Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (replaces) {
                Files.move(old, target, StandardCopyOption.ATOMIC_MOVE);
            }
            throw e;
        }
    }

    /** Only a folder that this class has made: it holds files and no folders. */
    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            for (Path file : list(folder)) {
                Files.delete(file);
            }
            Files.delete(folder);
        }
    }

    private static List<Path> list(Path dir) throws IOException {
        try (Stream<Path> files = Files.list(dir)) {
            return files.sorted().toList();
        }
    }

    private static String name(Path path) {
        Path last = path.getFileName();
        return last == null ? "" : last.toString();
    }
}
