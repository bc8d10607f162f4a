package org.skeinday.load;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.App;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledAttempt;
import org.skeinday.platform.http.Pace;

/** The real server with the demo's event, one attempt called, and many devices that have joined. */
final class Hall implements AutoCloseable {
    private final App app;
    private final String attempt;
    private final List<String> cookies = new ArrayList<>();

    Hall(Path data, int devices) throws Exception {
        if (Program.run("import", "demo-data", "--data", data.toString()) != 0) {
            throw new IOException("The demo could not be loaded");
        }
        app = App.start(new App.Settings(data, 0, false, Pace.normal()), Clock.systemDefaultZone(), new SecureRandom());
        attempt = CalledAttempt.call(new Visitor(port(), "", 1));
        String token = app.joinLink().substring(app.joinLink().indexOf('#') + 1);
        Visitor joiner = new Visitor(port(), "", 2);
        for (int i = 0; i < devices; i++) {
            Map<String, String> form = new HashMap<>(Map.of("token", token, "role", "timekeeper", "person", ""));
            HttpResponse<String> joined = joiner.form("/join", form);
            cookies.add(joined.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", ""));
        }
    }

    int port() {
        return app.port();
    }

    String attempt() {
        return attempt;
    }

    String cookie(int device) {
        return cookies.get(device % cookies.size());
    }

    @Override
    public void close() throws IOException {
        app.close();
    }
}
