package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.TestIds;

/** Reads files into an empty record, for tests. */
final class Reading {
    static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

    private Reading() {}

    static DayFiles.Read of(Map<String, String> texts) {
        return DayFiles.read(texts, Day.EMPTY, TestIds.from("act-"), ZONE, Duration.ZERO);
    }

    /** A day that is right, with one file put in place of its own. */
    static DayFiles.Read with(String file, String text) {
        Map<String, String> texts = new HashMap<>(RIGHT);
        texts.put(file, text);
        return of(texts);
    }

    /** The one error there is. */
    static CellError only(DayFiles.Read read) {
        assertEquals(
                1,
                read.errors().size(),
                () -> read.errors().stream().map(CellError::text).toList().toString());
        return read.errors().get(0);
    }

    /** The one error there is stands here, and says this. */
    static void says(DayFiles.Read read, int line, String column, String wrong, String right) {
        CellError error = only(read);
        assertEquals(line, error.line(), error.text());
        assertEquals(column, error.column(), error.text());
        assertTrue(error.wrong().contains(wrong), error.text());
        assertTrue(error.right().contains(right), error.text());
    }

    static void right(DayFiles.Read read) {
        assertEquals(List.of(), read.errors());
    }

    static final Map<String, String> RIGHT = Map.of(
            "event.csv",
            "name,kind,day,attempts\nReed Day,hosting,2026-05-09,3\n",
            "models.csv",
            "model,team,hook distance\nRail 1,Reed,240 mm\nRail 2,Reed,240 mm\n",
            "batches.csv",
            "batch\nA\n",
            "motors.csv",
            "tag,batch,team,loop,mass\nR-01,A,Reed,18.5 in,1.6 g\n",
            "entries.csv",
            "entry,team,models\nTeal,Reed,Rail 1\n",
            "windows.csv",
            "entry,opens,closes\nTeal,2026-05-09 10:00,2026-05-09 10:12\n",
            "crew.csv",
            "name,tasks\nIda,winds\n");
}
