package org.skeinday.platform.http;

import gg.jte.Content;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import gg.jte.resolve.DirectoryCodeResolver;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** Renders pages and fragments. Everything that a person reads goes through here, so that it is escaped. */
public final class Page {
    private static final int BAD_REQUEST = 400;
    private static final String MOMENT = "skeinday.moment";
    private final TemplateEngine engine;
    private final List<NavItem> nav;
    private final Pace pace;
    private final UnaryOperator<String> nameOfPerson;
    private volatile Supplier<String> trouble = () -> "";
    private volatile Supplier<RecordMoment> moment = () -> RecordMoment.NONE;
    private volatile List<PageHelp> help = List.of();
    private final Alike<PackedPart> parts = new Alike<>();
    private final Alike<Object> views = new Alike<>();
    private volatile Function<Context, Content> first = context -> output -> {};

    /** @param nameOfPerson display name of a person's id; an unknown one as it is */
    public Page(TemplateEngine engine, List<NavItem> nav, Pace pace, UnaryOperator<String> nameOfPerson) {
        this.engine = engine;
        this.nav = List.copyOf(nav);
        this.pace = pace;
        this.nameOfPerson = nameOfPerson;
    }

    /** What every page says on top while it holds, for example that the disk is full; empty when all is well. */
    public void sayTrouble(Supplier<String> words) {
        trouble = words;
    }

    /** What stands before everything else on every page while there is something. @param view of the one who asks */
    public void sayFirst(String template, Function<Context, Object> view) {
        first = context -> {
            Object seen = view.apply(context); // read before anything is written
            return output -> engine.render(template, Map.of("view", seen), output);
        };
    }

    /** What each page says at its foot. */
    public void sayHelp(List<PageHelp> all) {
        help = List.copyOf(all);
    }

    /** The longest path that fits says most of it. */
    private List<String> helpOf(String path) {
        return help.stream()
                .filter(one -> one.isOf(path))
                .max(Comparator.comparingInt(one -> one.path().length()))
                .map(PageHelp::sentences)
                .orElse(List.of());
    }

    /** Which moment of the record a page shows; asked for before the page is made, never after. */
    public void sayMoment(Supplier<RecordMoment> now) {
        moment = now;
    }

    /** Noted at the door, since what a page shows is read before it is rendered. */
    void noteMoment(Context context) {
        context.attribute(MOMENT, moment.get());
    }

    private static RecordMoment momentOf(Context context) {
        @Nullable RecordMoment noted = context.attribute(MOMENT);
        return noted == null ? RecordMoment.NONE : noted;
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
        write(
                context,
                render(
                        template,
                        Map.of("frame", frame(context, title, momentOf(context).words()), "view", view)));
    }

    /**
     * A part of a page: its template takes only its {@code view}. A page that has it already gets 304: the tag is made
     * from the content itself, so that it is right for every role, unit and moment.
     */
    public void fragment(Context context, String template, Object view) {
        send(context, render(template, Map.of("view", view)));
    }

    /**
     * A part that looks alike for many devices: a hall of them asks for it in one moment, and it is made once.
     *
     * @param alike what it depends on beside the record: role and units, for example
     * @param clock words that tell the time are at most a second old
     * @param view asked for only when the part is made anew
     */
    public void shared(Context context, String alike, Clock clock, String template, Supplier<Object> view) {
        parts.of(
                        template + " " + alike,
                        momentOf(context),
                        moment,
                        clock,
                        () -> PackedPart.of(render(template, Map.of("view", view.get()))))
                .send(context);
    }

    /** The same of what a page or part shows, where the page around it is another for each device. */
    public <V> V sharedView(Context context, String alike, Clock clock, Class<V> kind, Supplier<V> view) {
        return kind.cast(views.of(kind.getName() + " " + alike, momentOf(context), moment, clock, view::get));
    }

    private void send(Context context, String html) {
        if (context.method().equals(HandlerType.GET) && context.statusCode() == 200) {
            PackedPart.of(html).send(context);
        } else {
            write(context, html);
        }
    }

    private static void write(Context context, String html) {
        context.contentType("text/html; charset=utf-8").result(html);
    }

    /** The same fragment again with what is wrong beside the fields. */
    public void invalid(Context context, String template, Object view) {
        context.status(422);
        fragment(context, template, view);
    }

    private String render(String template, Map<String, Object> parameters) {
        StringOutput output = new StringOutput(8 * 1024);
        engine.render(template, parameters, output);
        return output.toString();
    }

    private Frame frame(Context context, String title, String at) {
        @Nullable Caller caller = context.attribute(Access.ATTRIBUTE);
        if (caller == null) {
            return new Frame(
                    title,
                    context.path(),
                    List.of(),
                    "",
                    "",
                    "",
                    pace.forScripts(),
                    trouble.get(),
                    output -> {},
                    List.of(),
                    false,
                    false,
                    ScreenLight.of(context));
        }
        boolean looksOn = caller.isSpectator();
        List<NavItem> own =
                nav.stream().filter(item -> item.isFor(caller.role())).toList();
        return new Frame(
                title,
                context.path(),
                own,
                who(caller),
                caller.device(),
                at,
                pace.forScripts(),
                trouble.get(),
                looksOn ? output -> {} : first.apply(context),
                looksOn ? List.of() : helpOf(context.path()), // it speaks to the crew
                context.statusCode() < BAD_REQUEST,
                looksOn,
                ScreenLight.of(context));
    }

    private String who(Caller caller) {
        String role = !caller.isLaptop()
                ? caller.role().word()
                : caller.role() == Role.COACH ? "this laptop" : "this laptop, lent";
        return caller.person().isEmpty() ? role : nameOfPerson.apply(caller.person()) + " · " + role;
    }
}
