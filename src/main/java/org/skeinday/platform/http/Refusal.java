package org.skeinday.platform.http;

/** A request that is not served, with the status and the sentence that the asker reads. */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int status;
    private final String heading;

    public Refusal(int status, String sentence) {
        this(status, "", sentence);
    }

    private Refusal(int status, String heading, String sentence) {
        super(sentence, null, false, false);
        this.status = status;
        this.heading = heading;
    }

    public int status() {
        return status;
    }

    public String sentence() {
        return String.valueOf(getMessage());
    }

    /** What stands above the sentence; empty for what is usual with the status. */
    String heading() {
        return heading;
    }

    /** For what is not served, or not written, while outside help is not allowed. */
    static Refusal quiet(String sentence) {
        return new Refusal(403, "Quiet until the attempt is closed", sentence);
    }

    public static Refusal malformed(String what) {
        return new Refusal(400, what);
    }

    public static Refusal notFound(String what) {
        return new Refusal(404, what);
    }

    static Refusal notJoined() {
        return new Refusal(
                401,
                "This device has not joined yet. Scan the join code on the laptop's page Join, or open /join here and type"
                        + " the code that stands there.");
    }

    static Refusal roleTooLow(Role minimum, Role actual) {
        return new Refusal(
                403, "This needs the role " + minimum.word() + "; this device joined as " + actual.word() + ".");
    }
}
