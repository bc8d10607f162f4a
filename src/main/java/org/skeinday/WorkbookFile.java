package org.skeinday;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Map;
import org.skeinday.exchange.XlsxBook;

/** A workbook in the place of a folder of files, told by its name's ending. */
final class WorkbookFile {
    private WorkbookFile() {}

    static boolean isOne(Path path) {
        return path.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx");
    }

    /** @throws IllegalArgumentException when it cannot be read as a workbook */
    static Map<String, String> read(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IllegalArgumentException("There is no workbook " + file);
        }
        XlsxBook.Read read = XlsxBook.read(String.valueOf(file.getFileName()), Files.readAllBytes(file));
        if (!read.errors().isEmpty()) {
            throw new IllegalArgumentException(read.errors().get(0).text());
        }
        return read.texts();
    }

    /** Written aside, then put in the place of an older one: at every moment there is one of them, whole. */
    static void write(Path file, Map<String, String> texts) throws IOException {
        Path target = file.toAbsolutePath().normalize();
        if (Files.isDirectory(target)) {
            throw new IllegalArgumentException(file + " is a folder; name a workbook to write");
        }
        Path parent = target.getParent();
        if (parent != null) {
            Files.createDirectories(parent);
        }
        Path aside = target.resolveSibling("." + target.getFileName() + "-new");
        try (FileChannel channel = FileChannel.open(
                aside, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
            ByteBuffer bytes = ByteBuffer.wrap(XlsxBook.write(texts));
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
        Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
}
