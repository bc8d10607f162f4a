package org.skeinday.review;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text as the words that a search compares: lower case, without accents, tags in one form. {@code A-03}, {@code a 3},
 * {@code A03} and {@code a3} are the tag a3.
 */
final class SearchWords {
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");

    private static final String BEFORE = "(?<![\\p{L}\\p{N}])";
    private static final String NUMBER = "0*(\\d{1,5})(?![\\p{L}\\p{N}])";

    /** Letters, then a number, parted by nothing or one sign, a single letter by a space too; no part of a longer word. */
    private static final Pattern TAG =
            Pattern.compile(BEFORE + "(\\p{L}(?= )|\\p{L}{1,3}(?! ))[-\\u2010-\\u2014_./ ]?" + NUMBER);

    /** As in "Lot 7": it may be one tag, and may be a word before a number. */
    private static final Pattern PARTED = Pattern.compile(BEFORE + "(\\p{L}{2,3}) " + NUMBER);

    private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");

    private SearchWords() {}

    static List<String> of(String text) {
        String plain = plain(text);
        List<String> words = new ArrayList<>();
        Matcher tags = TAG.matcher(plain);
        var rest = new StringBuilder();
        while (tags.find()) {
            words.add(tags.group(1) + tags.group(2));
            tags.appendReplacement(rest, " ");
        }
        tags.appendTail(rest);
        for (String word : BETWEEN.split(rest.toString(), 0)) {
            if (!word.isEmpty()) {
                words.add(word);
            }
        }
        return words;
    }

    /** The words of a text that is searched: with those that may be one tag put together as well. */
    static List<String> searched(String text) {
        List<String> words = new ArrayList<>(of(text));
        Matcher parted = PARTED.matcher(plain(text));
        while (parted.find()) {
            words.add(parted.group(1) + parted.group(2));
        }
        return words;
    }

    /** Lower case, without accents; letters that carry no mark of their own are written out. */
    static String plain(String text) {
        String apart = Normalizer.normalize(text, Normalizer.Form.NFKD);
        return MARKS.matcher(apart)
                .replaceAll("")
                .toLowerCase(Locale.ROOT)
                .replace("ß", "ss")
                .replace("ø", "o")
                .replace("æ", "ae")
                .replace("œ", "oe")
                .replace("ł", "l")
                .replace("đ", "d")
                .replace("ı", "i");
    }
}
