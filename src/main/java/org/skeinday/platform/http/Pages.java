package org.skeinday.platform.http;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import gg.jte.resolve.DirectoryCodeResolver;
import io.javalin.http.Context;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.function.Supplier;
import org.skeinday.platform.record.People;

/** Renders templates; each takes one typed view. */
public final class Pages {
    private final TemplateEngine engine;
    private final People people;
    private final Supplier<String> trouble;
    private final SecureRandom random;

    private Pages(TemplateEngine engine, People people, Supplier<String> trouble, SecureRandom random) {
        this.engine = engine;
        this.people = people;
        this.trouble = trouble;
        this.random = random;
    }

    /** @param dev read templates from the source folder, so that a change shows at once */
    public static Pages of(boolean dev, People people, Supplier<String> trouble, SecureRandom random) {
        TemplateEngine engine = dev
                ? TemplateEngine.create(new DirectoryCodeResolver(Path.of("src/main/jte")), ContentType.Html)
                : TemplateEngine.createPrecompiled(ContentType.Html);
        return new Pages(engine, people, trouble, random);
    }

    public Frame frame(String title, String address, Caller caller) {
        return Frame.of(title, address, caller, people.name(caller.person()), trouble.get());
    }

    public String name(String person) {
        return people.name(person);
    }

    /** A fresh id for the act that a form will send: 32 hexadecimal digits. */
    public String newActId() {
        byte[] bytes = new byte[16];
        random.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    public void show(Context ctx, String template, Object view) {
        var output = new StringOutput();
        engine.render(template + ".jte", view, output);
        ctx.header("Cache-Control", "no-store");
        ctx.html(output.toString());
    }
}
