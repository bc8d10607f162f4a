package org.skeinday.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import org.skeinday.exchange.Bundle;
import org.skeinday.exchange.Unpacked;
import org.skeinday.exchange.XlsxBook;

/** A workbook (.xlsx) or a bundle (.json) in the place of a folder of files, told by its name's ending. */
final class OneFile {
    private OneFile() {}

    static boolean isOne(Path path) {
        return Unpacked.isOne(path.toString());
    }

    static boolean isBundle(Path path) {
        return Unpacked.isBundle(path.toString());
    }

    /** @throws IllegalArgumentException when it cannot be read */
    static Map<String, String> read(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IllegalArgumentException("There is no " + (isBundle(file) ? "bundle " : "workbook ") + file);
        }
        Unpacked unpacked = Unpacked.of(String.valueOf(file.getFileName()), Files.readAllBytes(file));
        if (!unpacked.errors().isEmpty()) {
            throw new IllegalArgumentException(unpacked.errors().get(0).text());
        }
        return unpacked.texts();
    }

    private static byte[] bytes(Path file, String about, Map<String, String> texts) {
        return isBundle(file) ? Bundle.write(about, texts).getBytes(StandardCharsets.UTF_8) : XlsxBook.write(texts);
    }

    /**
     * Written aside, then put in the place of an older one: at every moment there is one of them, whole.
     *
     * @param about what it is, in words: a bundle says so
     */
    static void write(Path file, String about, Map<String, String> texts) throws IOException {
        Path target = file.toAbsolutePath().normalize();
        if (Files.isDirectory(target)) {
            throw new IllegalArgumentException(file + " is a folder; name a file to write");
        }
        Path parent = target.getParent();
        if (parent != null) {
            Files.createDirectories(parent);
        }
        Path aside = target.resolveSibling("." + target.getFileName() + "-new");
        try (FileChannel channel = FileChannel.open(
                aside, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
            ByteBuffer bytes = ByteBuffer.wrap(bytes(file, about, texts));
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
        Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
}
