package org.skeinday.house;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Classes whose name ends in IT run two at once, each in a process of its own; one that is {@link NeedsQuiet} runs alone. The
 * others share a lock of a file that it takes for itself. Who waits for it holds the door, so that those who share do not
 * go on for ever by turns. Registered for all tests in {@code META-INF/services}.
 */
public final class Turns implements BeforeAllCallback, AfterAllCallback {
    private static final ExtensionContext.Namespace SPACE = ExtensionContext.Namespace.create(Turns.class);

    @Override
    public void beforeAll(ExtensionContext context) throws IOException {
        Class<?> test = context.getRequiredTestClass();
        if (!test.getSimpleName().endsWith("IT")) {
            return;
        }
        Path folder = Files.createDirectories(Path.of("target", "turns"));
        try (FileChannel door = open(folder.resolve("door"))) {
            door.lock(); // until the channel is closed
            FileChannel room = open(folder.resolve("room"));
            room.lock(0, Long.MAX_VALUE, !test.isAnnotationPresent(NeedsQuiet.class));
            context.getStore(SPACE).put("room", room);
        }
    }

    @Override
    public void afterAll(ExtensionContext context) throws IOException {
        FileChannel room = context.getStore(SPACE).remove("room", FileChannel.class);
        if (room != null) {
            room.close();
        }
    }

    private static FileChannel open(Path file) throws IOException {
        return FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    }
}
