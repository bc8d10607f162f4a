package org.skeinday.access;

import java.net.http.HttpResponse;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.Visitor;

/** Every page that can be reached by reading: from each route, and along every link and every part that refreshes. */
final class Crawl {
    private static final Pattern ADDRESS = Pattern.compile("(?:href|hx-get|data-refetch|src)=\"(/[^\"#]*)\"");
    private static final Pattern FORM = Pattern.compile("(?s)<(?:form|button)[^>]*hx-post=\"([^\"]+)\"[^>]*>");
    private static final Pattern FIELD =
            Pattern.compile("<(?:input|select|textarea)[^>]*name=\"([^\"]+)\"(?:[^>]*value=\"([^\"]*)\")?");

    private static final Pattern CHOICE = Pattern.compile("(?s)<select[^>]*name=\"([^\"]+)\"[^>]*>(.*?)</select>");
    private static final Pattern OPTION = Pattern.compile("<option value=\"([^\"]+)\"");
    private static final Pattern CHOSEN = Pattern.compile("<option value=\"([^\"]*)\"[^>]*\\bselected\\b");

    /** Of pages that differ in an id only, so many are read. */
    private static final int ALIKE = 2;

    private final Map<String, HttpResponse<String>> pages = new LinkedHashMap<>();

    static Crawl of(House house, Visitor who) throws Exception {
        return from(
                house.rights().stream()
                        .filter(right -> right.method().equals("GET"))
                        .map(house::filled)
                        .toList(),
                who);
    }

    /** The same from these addresses on. */
    static Crawl from(List<String> first, Visitor who) throws Exception {
        Crawl crawl = new Crawl();
        Deque<String> open = new ArrayDeque<>(first);
        Set<String> known = new HashSet<>(open);
        Map<String, Integer> alike = new HashMap<>();
        while (!open.isEmpty()) {
            String path = open.remove();
            HttpResponse<String> answer = who.get(path);
            crawl.pages.put(path, answer);
            Matcher link = ADDRESS.matcher(answer.body());
            while (link.find()) {
                String to = link.group(1).replace("&amp;", "&");
                if (known.add(to) && alike.merge(to.replaceAll("[0-9a-f]{32}-\\d+", "ID"), 1, Integer::sum) <= ALIKE) {
                    open.add(to);
                }
            }
        }
        return crawl;
    }

    Map<String, HttpResponse<String>> pages() {
        return pages;
    }

    /** Fields by the address that their form posts to, with the value that the page offers. */
    Map<String, Map<String, String>> forms() {
        Map<String, Map<String, String>> forms = new HashMap<>();
        pages.values().forEach(page -> addForms(page.body(), forms));
        return forms;
    }

    /** The same of one page. */
    static Map<String, Map<String, String>> formsOn(String page) {
        Map<String, Map<String, String>> forms = new HashMap<>();
        addForms(page, forms);
        return forms;
    }

    private static void addForms(String page, Map<String, Map<String, String>> forms) {
        Matcher form = FORM.matcher(page);
        while (form.find()) {
            int end = page.indexOf("</form>", form.end());
            String inside = page.substring(form.end(), end < 0 ? form.end() : end);
            Map<String, String> fields = forms.computeIfAbsent(form.group(1), at -> new LinkedHashMap<>());
            Matcher field = FIELD.matcher(inside);
            choices(inside).forEach(fields::putIfAbsent);
            while (field.find()) {
                fields.putIfAbsent(field.group(1), field.group(2) == null ? "" : asTyped(field.group(2)));
            }
        }
    }

    private static String asTyped(String attribute) {
        return attribute
                .replace("&#34;", "\"")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&");
    }

    /** What is chosen in each list, else the first that can be. */
    private static Map<String, String> choices(String form) {
        Map<String, String> choices = new LinkedHashMap<>();
        Matcher list = CHOICE.matcher(form);
        while (list.find()) {
            Matcher chosen = CHOSEN.matcher(list.group(2));
            Matcher first = OPTION.matcher(list.group(2));
            String value = chosen.find() ? chosen.group(1) : "";
            choices.put(list.group(1), value.isEmpty() && first.find() ? first.group(1) : value);
        }
        return choices;
    }

    /** Those that did not answer as they should. */
    List<String> troubles() {
        List<String> found = new ArrayList<>();
        pages.forEach((path, answer) -> {
            if (answer.statusCode() >= 500) {
                found.add(answer.statusCode() + " " + path);
            }
        });
        return found;
    }
}
