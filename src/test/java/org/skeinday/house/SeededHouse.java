package org.skeinday.house;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** Classes that break the rules on purpose, compiled beside the house, so that each rule is seen to fail. */
final class SeededHouse {
    private final Path sources;
    private final Path classes;
    private final List<Path> files = new ArrayList<>();

    SeededHouse(Path folder) {
        this.sources = folder.resolve("sources");
        this.classes = folder.resolve("classes");
    }

    /** A class {@code name} in a room's ring that does what it should not. */
    void add(String ring, String name, String body) throws IOException {
        String home = ring.isEmpty() ? HouseRules.ROOT : HouseRules.room(ring);
        Path file = sources.resolve(home.replace('.', '/')).resolve(name + ".java");
        Files.createDirectories(file.getParent());
        Files.writeString(file, "package " + home + ";\npublic class " + name + " { " + body + " }\n");
        files.add(file);
    }

    Path sources() {
        return sources;
    }

    Path compile() throws IOException {
        Files.createDirectories(classes);
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter said = new StringWriter();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
            List<String> options =
                    List.of("-proc:none", "-cp", System.getProperty("java.class.path"), "-d", classes.toString());
            boolean done = compiler.getTask(
                            said, manager, null, options, null, manager.getJavaFileObjectsFromPaths(files))
                    .call();
            assertTrue(done, said.toString());
        }
        return classes;
    }
}
