package org.skeinday.load;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a Java process takes, as the system and its own virtual machine tell it. */
final class Memory {
    private static final Pattern TOTAL = Pattern.compile("(?m)^Total +\\d+ +(\\d+)");

    private final long pid;

    Memory(long pid) {
        this.pid = pid;
    }

    long pid() {
        return pid;
    }

    /** Resident, in MB; 0 where the system does not tell. */
    long residentMb() throws IOException {
        Path status = Path.of("/proc/" + pid + "/status");
        if (!Files.exists(status)) {
            return 0;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .map(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                .findFirst()
                .orElse(0L);
    }

    /** Processor time it has taken since its start, in ms; 0 where the system does not tell. */
    long processorMs() {
        return ProcessHandle.of(pid)
                .flatMap(process -> process.info().totalCpuDuration())
                .map(Duration::toMillis)
                .orElse(0L);
    }

    /** What is alive on the heap, in kB: after a full collection, which stops the process for a moment. */
    long aliveKb() throws IOException, InterruptedException {
        Matcher total = TOTAL.matcher(ask("GC.class_histogram")); // counts what is reachable, in one pause
        if (!total.find()) {
            throw new IOException("The heap was not told");
        }
        return Long.parseLong(total.group(1)) / 1024;
    }

    /** Threads of this name. */
    long threads(String name) throws IOException, InterruptedException {
        return ask("Thread.print")
                .lines()
                .filter(line -> line.startsWith("\"" + name + "\""))
                .count();
    }

    private String ask(String command) throws IOException, InterruptedException {
        String jcmd = Path.of(System.getProperty("java.home"), "bin", "jcmd").toString();
        Process process = new ProcessBuilder(jcmd, String.valueOf(pid), command)
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return said;
    }
}
