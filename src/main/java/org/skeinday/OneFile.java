package org.skeinday;

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
import org.skeinday.exchange.Bundle;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.FileText;
import org.skeinday.exchange.XlsxBook;

/** A workbook (.xlsx) or a bundle (.json) in the place of a folder of files, told by its name's ending. */
final class OneFile {
    private static final String WORKBOOK = ".xlsx";
    private static final String BUNDLE = ".json";

    private OneFile() {}

    static boolean isOne(Path path) {
        return ends(path, WORKBOOK) || ends(path, BUNDLE);
    }

    static boolean isBundle(Path path) {
        return ends(path, BUNDLE);
    }

    private static boolean ends(Path path, String ending) {
        return path.toString().toLowerCase(Locale.ROOT).endsWith(ending);
    }

    /** @throws IllegalArgumentException when it cannot be read */
    static Map<String, String> read(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IllegalArgumentException("There is no " + (ends(file, BUNDLE) ? "bundle " : "workbook ") + file);
        }
        String name = String.valueOf(file.getFileName());
        byte[] bytes = Files.readAllBytes(file);
        if (ends(file, BUNDLE)) {
            Bundle.Read read = Bundle.read(name, FileText.decode(bytes));
            refuse(read.errors());
            return read.texts();
        }
        XlsxBook.Read read = XlsxBook.read(name, bytes);
        refuse(read.errors());
        return read.texts();
    }

    private static void refuse(List<CellError> errors) {
        if (!errors.isEmpty()) {
            throw new IllegalArgumentException(errors.get(0).text());
        }
    }

    private static byte[] bytes(Path file, String about, Map<String, String> texts) {
        return ends(file, BUNDLE) ? Bundle.write(about, texts).getBytes(StandardCharsets.UTF_8) : XlsxBook.write(texts);
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
