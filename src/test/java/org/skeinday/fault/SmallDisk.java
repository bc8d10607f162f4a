package org.skeinday.fault;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** A disk in memory of a few megabytes, with ballast that takes its space away and gives it back. */
public final class SmallDisk implements AutoCloseable {
    private final Path folder;

    private SmallDisk(Path folder) {
        this.folder = folder;
    }

    /** Mounts one, or skips the test with a message where that is not allowed. */
    public static SmallDisk mount(Path folder, int megabytes) throws IOException, InterruptedException {
        Files.createDirectories(folder);
        String said = run("mount", "-t", "tmpfs", "-o", "size=" + megabytes + "m", "tmpfs", folder.toString());
        Assumptions.assumeTrue(said.isEmpty(), "A small disk cannot be mounted here: " + said);
        return new SmallDisk(folder);
    }

    public Path folder() {
        return folder;
    }

    /** Leaves about {@code bytes} free, asked anew before each block: what serves writes to this disk meanwhile. */
    public void leave(long bytes) throws IOException {
        Path ballast = folder.resolve("ballast");
        Files.deleteIfExists(ballast);
        FileStore store = Files.getFileStore(folder);
        byte[] block = new byte[4096];
        try (var out = Files.newOutputStream(ballast)) {
            while (store.getUsableSpace() >= bytes + block.length) {
                out.write(block);
            }
        }
    }

    public void giveBack() throws IOException {
        Files.deleteIfExists(folder.resolve("ballast"));
    }

    @Override
    public void close() throws IOException, InterruptedException {
        run("umount", "-l", folder.toString());
    }

    /** @return what went wrong, empty when all went well */
    private static String run(String... command) throws InterruptedException {
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
            process.waitFor(10, TimeUnit.SECONDS);
            return process.exitValue() == 0 ? "" : said.strip() + " (" + process.exitValue() + ")";
        } catch (IOException e) {
            return String.valueOf(e.getMessage());
        }
    }
}
