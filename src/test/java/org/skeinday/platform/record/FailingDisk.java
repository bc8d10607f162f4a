package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Path;

/** The real file, with a switch for each way a disk fails, and a count of what was forced. */
final class FailingDisk implements JournalFile.Opener {
    volatile boolean failAppends;
    volatile boolean failForces;
    volatile boolean memoryOutAtForce;
    volatile int opened;
    volatile long bytesAppended;
    volatile long bytesForced;

    @Override
    @SuppressWarnings("NonAtomicVolatileUpdate") // the writer alone opens
    public JournalFile open(Path path) throws IOException {
        opened++;
        JournalFile real = JournalFile.onDisk(path);
        bytesAppended = real.length();
        bytesForced = real.length();
        return new JournalFile() {
            @Override
            public long length() throws IOException {
                return real.length();
            }

            @Override
            public void append(byte[] bytes) throws IOException {
                if (failAppends) {
                    real.append(java.util.Arrays.copyOf(bytes, bytes.length / 2));
                    throw new IOException("No space left on device");
                }
                real.append(bytes);
                bytesAppended = real.length();
            }

            @Override
            public void force() throws IOException {
                if (memoryOutAtForce) {
                    throw new OutOfMemoryError("Java heap space");
                }
                if (failForces) {
                    throw new IOException("Input/output error");
                }
                real.force();
                bytesForced = real.length();
            }

            @Override
            public void truncate(long length) throws IOException {
                real.truncate(length);
            }

            @Override
            public void close() throws IOException {
                real.close();
            }
        };
    }
}
