package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;

/**
 * The one way in which small files of a data folder are written: what holds a secret, a name or a word for the next
 * start. Written aside, forced, renamed, and its directory forced: at every moment, power cuts included, the old or the
 * new file is there, whole, and its owner alone may read it.
 */
public final class WholeFile {
    /** Ends the name of a file that is being written; one that a kill has left is dropped at the next start. */
    static final String ASIDE = ".written-aside";

    private WholeFile() {}

    public static void write(Path file, String text) throws IOException {
        write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /** @throws IOException when the disk or its rights do not allow it: then the old file is still there */
    public static void write(Path file, byte[] bytes) throws IOException {
        Path aside = file.resolveSibling(file.getFileName() + ASIDE);
        Files.deleteIfExists(aside); // left by a kill, perhaps with other rights
        try (FileChannel channel = OwnerOnly.create(aside)) {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) {
                channel.write(left);
            }
            channel.force(true);
        }
        Files.move(aside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        forceDirectoryOf(file);
    }

    /** Drops what kills have left half written: names and codes may be in it. */
    static void dropLeft(Path folder) throws IOException {
        List<Path> left;
        try (Stream<Path> all = Files.list(folder)) {
            left = all.filter(file -> file.getFileName().toString().endsWith(ASIDE))
                    .toList();
        }
        for (Path file : left) {
            Files.delete(file);
        }
    }

    /** Without it a power cut may bring back the name that a file had before, or none. */
    static void forceDirectoryOf(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // Windows opens no directory, and some sticks force none: there the system does it in its own time
        }
    }
}
