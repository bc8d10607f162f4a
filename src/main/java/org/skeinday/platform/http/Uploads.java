package org.skeinday.platform.http;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.util.List;
import org.skeinday.platform.record.PlainText;

/** Files that a form brings, checked as a form before anybody reads one of them. */
final class Uploads {
    private static final String TORN =
            "These files did not arrive whole, or not as a form sends them. Choose them again on"
                    + " this page and send them once more.";

    private Uploads() {}

    /** @throws Refusal 400 for what is no form with files, 422 for a file whose name cannot be printed */
    static void check(Context context) {
        for (UploadedFile file : files(context)) {
            PlainText.whyNot(file.filename()).ifPresent(why -> {
                throw new Refusal(422, "The name of a file holds a sign that cannot be printed: give it another name.");
            });
        }
    }

    /** Reads a form to its end, with files or without, so that nothing is left to wait for. */
    static void await(Context context) {
        if (context.isMultipartFormData()) {
            files(context);
        } else {
            context.formParamMap();
        }
    }

    /** What the form's reader throws is of many kinds, and all of them mean that the form was torn on its way. */
    private static List<UploadedFile> files(Context context) {
        try {
            return context.uploadedFiles();
        } catch (Exception e) {
            context.header("Connection", "close"); // what else came of it is not read
            throw Refusal.malformed(TORN);
        }
    }
}
