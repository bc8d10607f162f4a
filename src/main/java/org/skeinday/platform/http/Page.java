package org.skeinday.platform.http;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import gg.jte.resolve.DirectoryCodeResolver;
import io.javalin.http.Context;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** Renders pages and fragments. Everything that a person reads goes through here, so that it is escaped. */
public final class Page {
    private final TemplateEngine engine;
    private final List<NavItem> nav;
    private final Pace pace;
    private final UnaryOperator<String> nameOfPerson;

    /** @param nameOfPerson display name of a person's id; an unknown one as it is */
    public Page(TemplateEngine engine, List<NavItem> nav, Pace pace, UnaryOperator<String> nameOfPerson) {
        this.engine = engine;
        this.nav = List.copyOf(nav);
        this.pace = pace;
        this.nameOfPerson = nameOfPerson;
    }

    /** Templates compiled into the program. */
    public static TemplateEngine precompiled() {
        return TemplateEngine.createPrecompiled(null, ContentType.Html, null, "org.skeinday.jte");
    }

    /** Templates read from their folder and compiled when they change, for development. */
    public static TemplateEngine fromFolder(Path folder) {
        return TemplateEngine.create(new DirectoryCodeResolver(folder), ContentType.Html);
    }

    /** A whole page: its template takes {@code Frame frame} and its own {@code view}. */
    public void show(Context context, String title, String template, Object view) {
        context.html(render(template, Map.of("frame", frame(context, title), "view", view)));
    }

    /** A part of a page: its template takes only its {@code view}. */
    public void fragment(Context context, String template, Object view) {
        context.html(render(template, Map.of("view", view)));
    }

    /** The same fragment again with what is wrong beside the fields. */
    public void invalid(Context context, String template, Object view) {
        context.status(422);
        fragment(context, template, view);
    }

    /** A fragment of state n: answers 304 when the page already has it for this caller. */
    public void fragment(Context context, long n, String template, ViewOfState view) {
        String tag = "\"" + n + "-" + Access.callerOf(context).role().word() + "\"";
        context.header("ETag", tag);
        context.header("Cache-Control", "no-cache");
        if (tag.equals(context.header("If-None-Match"))) {
            context.status(304);
        } else {
            fragment(context, template, view.read());
        }
    }

    /** Reads the view only when it has to be sent. */
    @FunctionalInterface
    public interface ViewOfState {
        Object read();
    }

    private String render(String template, Map<String, Object> parameters) {
        StringOutput output = new StringOutput(8 * 1024);
        engine.render(template, parameters, output);
        return output.toString();
    }

    private Frame frame(Context context, String title) {
        @Nullable Caller caller = context.attribute("skeinday.caller");
        if (caller == null) {
            return new Frame(title, context.path(), List.of(), "", pace.forScripts());
        }
        List<NavItem> own = nav.stream()
                .filter(item -> caller.role().covers(item.minimum()))
                .toList();
        return new Frame(title, context.path(), own, who(caller), pace.forScripts());
    }

    private String who(Caller caller) {
        String role =
                caller.device().equals("laptop") ? "this laptop" : caller.role().word();
        return caller.person().isEmpty() ? role : nameOfPerson.apply(caller.person()) + " · " + role;
    }
}
