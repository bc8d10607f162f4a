package org.skeinday.platform.http;

/** A request that is not served, with the status and the sentence that the asker reads. */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int status;

    public Refusal(int status, String sentence) {
        super(sentence, null, false, false);
        this.status = status;
    }

    public int status() {
        return status;
    }

    public String sentence() {
        return String.valueOf(getMessage());
    }

    public static Refusal malformed(String what) {
        return new Refusal(400, what);
    }

    public static Refusal notFound(String what) {
        return new Refusal(404, what);
    }

    static Refusal notJoined() {
        return new Refusal(401, "This device has not joined yet. Scan the join code shown on the coach's laptop.");
    }

    static Refusal roleTooLow(Role minimum, Role actual) {
        return new Refusal(
                403, "This needs the role " + minimum.word() + "; this device joined as " + actual.word() + ".");
    }
}
