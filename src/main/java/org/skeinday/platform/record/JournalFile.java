package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** The bytes of the journal on disk. Its own type, so that a test can make a disk that fails. */
interface JournalFile extends AutoCloseable {
    long length() throws IOException;

    void append(byte[] bytes) throws IOException;

    void force() throws IOException;

    void truncate(long length) throws IOException;

    @Override
    void close() throws IOException;

    /** How a journal file is opened for appending. */
    @FunctionalInterface
    interface Opener {
        JournalFile open(Path path) throws IOException;
    }

    static JournalFile onDisk(Path path) throws IOException {
        FileChannel channel = FileChannel.open(path, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        channel.position(channel.size());
        return new JournalFile() {
            @Override
            public long length() throws IOException {
                return channel.size();
            }

            @Override
            public void append(byte[] bytes) throws IOException {
                ByteBuffer buffer = ByteBuffer.wrap(bytes);
                while (buffer.hasRemaining()) {
                    channel.write(buffer);
                }
            }

            @Override
            public void force() throws IOException {
                channel.force(false);
            }

            @Override
            public void truncate(long length) throws IOException {
                channel.truncate(length);
                channel.position(length);
            }

            @Override
            public void close() throws IOException {
                channel.close();
            }
        };
    }
}
