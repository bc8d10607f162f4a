package org.skeinday.platform.http;

import java.util.List;

/**
 * What a page is for, in plain words: at its foot, and on the printed guide.
 *
 * @param path of the page; it holds for those beneath it too, unless one of them has its own
 * @param sentences one to five
 */
public record PageHelp(String word, String path, List<String> sentences) {
    private static final int MOST = 5;

    public PageHelp {
        sentences = List.copyOf(sentences);
        if (sentences.isEmpty() || sentences.size() > MOST) {
            throw new IllegalArgumentException(
                    "The help of " + path + " must have 1 to " + MOST + " sentences, but had " + sentences.size());
        }
    }

    boolean isOf(String asked) {
        return asked.equals(path) || path.length() > 1 && asked.startsWith(path + "/");
    }
}
