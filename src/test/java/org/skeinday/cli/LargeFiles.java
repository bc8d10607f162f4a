package org.skeinday.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Files that are larger than a season: as many motors as flights, one flight of each. */
final class LargeFiles {
    private LargeFiles() {}

    /** Texts by file name. @param rows of motors, and as many flights; 1 to 40,000, so that no two moments are the same */
    static Map<String, String> of(int rows) {
        StringBuilder motors = new StringBuilder("tag,batch,team,direction,loop (in),mass (g)\n");
        StringBuilder flights = new StringBuilder("event,model,motor,flown,crank turns,time\n");
        for (int i = 0; i < rows; i++) {
            motors.append("M").append(i).append(",A,Reed,cw,18,1.6\n");
            flights.append(String.format(
                    Locale.ROOT,
                    "Evening,Rail,M%d,2026-03-0%d %02d:%02d:%02d,150,1:0%d%n",
                    i,
                    1 + i % 9,
                    8 + i / 3600,
                    i / 60 % 60,
                    i % 60,
                    i % 10));
        }
        Map<String, String> files = new LinkedHashMap<>();
        files.put("event.csv", "name,kind,day\nEvening,practice,2026-03-01\n");
        files.put("models.csv", "model,team,hook distance\nRail,Reed,240 mm\n");
        files.put("batches.csv", "batch\nA\n");
        files.put("motors.csv", motors.toString());
        files.put("flights.csv", flights.toString());
        return files;
    }

    /** The same in a folder. */
    static Path into(Path folder, int rows) throws IOException {
        Files.createDirectories(folder);
        for (Map.Entry<String, String> file : of(rows).entrySet()) {
            Files.writeString(folder.resolve(file.getKey()), file.getValue());
        }
        return folder;
    }
}
