package org.skeinday.platform.http;

/** A request that cannot be answered as asked: status, what is wrong, what would be right. */
public final class Problem extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int status;
    private final String title;

    public Problem(int status, String title, String message) {
        super(message);
        this.status = status;
        this.title = title;
    }

    public static Problem notFound(String what) {
        return new Problem(404, "Not here", what);
    }

    int status() {
        return status;
    }

    String title() {
        return title;
    }

    String words() {
        return String.valueOf(getMessage());
    }
}
