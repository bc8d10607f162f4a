package org.skeinday.review.web;

import java.time.Clock;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.skeinday.App;
import org.skeinday.exchange.action.ImportFiles;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;

/** Practice flights of the demo's models, taken in as a file: their times go with launch torque, 100 s for each in-ozf. */
public final class FlownSeason {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final String[] MOTORS = {"A1", "A2", "A4", "B1", "B3"};

    private FlownSeason() {}

    /** @param last when the last of them was flown; each a quarter of an hour after the one before */
    public static void into(App app, int flights, LocalDateTime last, long seed) {
        var random = new SplittableRandom(seed);
        var text = new StringBuilder("event,model,motor,flown,crank turns,ratio,launch torque (in-ozf),back off,time,"
                + "remaining,note,valid,reason\n");
        for (int i = 0; i < flights; i++) {
            double torque = 0.3 + 0.3 * random.nextDouble();
            double seconds = 60 + 100 * torque + 2 * random.nextGaussian();
            boolean spoilt = i % 17 == 16;
            text.append(String.format(
                    Locale.ROOT,
                    "Saltmarsh Practice Evening,Reed %s,%s,%s,%d,10,%.3f,2,%.2f,%d,%s,%s,%s\n",
                    i % 2 == 0 ? "One" : "Two",
                    MOTORS[i % MOTORS.length],
                    MINUTE.format(last.minusMinutes(15L * (flights - 1 - i))),
                    200 + random.nextInt(30),
                    torque,
                    seconds - (i % 2) * 20,
                    30 + random.nextInt(20),
                    i == 3 ? "drifted to the north wall" : "",
                    spoilt ? "no" : "yes",
                    spoilt ? "touched a beam" : ""));
        }
        files(app, Map.of("flights.csv", text.toString()), seed);
    }

    /** Files as an import takes them. */
    public static void files(App app, Map<String, String> texts, long seed) {
        Clock clock = Clock.systemDefaultZone();
        var content = new ImportFiles.Files(texts, clock.getZone().getId(), 0);
        String id = String.format(Locale.ROOT, "%032x", seed);
        Answer answer = app.writer()
                .submit(new Act(
                        id, "exchange.import", "laptop", "", clock.instant(), Json.MAPPER.valueToTree(content)));
        if (!(answer instanceof Answer.Saved)) {
            throw new AssertionError(answer);
        }
    }
}
