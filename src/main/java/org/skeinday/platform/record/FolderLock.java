package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/** Holds a data folder for one program. The system lets go of it when the program dies, so a stale one cannot block. */
final class FolderLock implements AutoCloseable {
    private final FileChannel channel;
    private final Path address;

    private FolderLock(FileChannel channel, Path address) {
        this.channel = channel;
        this.address = address;
    }

    static FolderLock take(Path folder) throws IOException {
        Path address = folder.resolve("running-at");
        FileChannel channel =
                FileChannel.open(folder.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        if (tryLock(channel) == null) {
            channel.close();
            String where = Files.exists(address) ? Files.readString(address).strip() : "";
            throw new AlreadyRunning(
                    "Skeinday is already running" + (where.isEmpty() ? "" : " at " + where) + " with the data folder "
                            + folder + ". Stop it first (Ctrl-C in its window), or name another folder with --data.",
                    where);
        }
        return new FolderLock(channel, address);
    }

    private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null; // held by this very program
        }
    }

    void runningAt(String where) throws IOException {
        WholeFile.write(address, where);
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(address);
        channel.close();
    }
}
