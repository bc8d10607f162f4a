package org.skeinday.platform.http;

import java.time.Duration;

/**
 * Every waiting time of the program in one place, so that tests can shorten them all together.
 *
 * @param hintGather hints within this time go out as one
 * @param heartbeat a stream that has nothing to say sends a comment this often
 * @param watchdog a page that heard nothing for this long connects again
 * @param retryMost longest wait of the outbox between two tries
 * @param slowClient a connection that takes nothing for this long is dropped
 * @param answer a page gives a request up after this long and asks again
 * @param undo how long an act can be taken back with one tap
 * @param clockLook between two looks at whether the laptop's clock has jumped
 * @param pinRounds of the hash of the coach's PIN ({@link PinHash}), which make each guess slow
 * @param wallTurn a wall that shows its rows page by page turns to the next one after this long
 * @param close a program that was asked to stop has ended after this long
 */
public record Pace(
        Duration hintGather,
        Duration heartbeat,
        Duration watchdog,
        Duration retryMost,
        Duration slowClient,
        Duration answer,
        Duration undo,
        Duration clockLook,
        int pinRounds,
        Duration wallTurn,
        Duration close) {
    /** A busy machine must not make a page give up what is about to be answered. */
    private static final Duration LEAST_ANSWER = Duration.ofSeconds(3);

    public static Pace normal() {
        return new Pace(
                Duration.ofMillis(100),
                Duration.ofSeconds(10),
                Duration.ofSeconds(25),
                Duration.ofSeconds(5),
                Duration.ofSeconds(30),
                Duration.ofSeconds(12),
                Duration.ofSeconds(10),
                Duration.ofSeconds(1),
                210_000,
                Duration.ofSeconds(9),
                Duration.ofSeconds(5));
    }

    /** The same waits, each divided by {@code n}, for tests. */
    public Pace dividedBy(int n) {
        return new Pace(
                hintGather.dividedBy(n),
                heartbeat.dividedBy(n),
                watchdog.dividedBy(n),
                retryMost.dividedBy(n),
                slowClient.dividedBy(n),
                longer(answer.dividedBy(n), LEAST_ANSWER),
                undo.dividedBy(n),
                clockLook.dividedBy(n),
                pinRounds / n,
                wallTurn.dividedBy(n),
                close);
    }

    private static Duration longer(Duration one, Duration other) {
        return one.compareTo(other) < 0 ? other : one;
    }

    /** What the page's scripts read: milliseconds by name. */
    String forScripts() {
        return "watchdog=" + watchdog.toMillis() + " retry=" + retryMost.toMillis() + " undo=" + undo.toMillis()
                + " answer=" + answer.toMillis() + " turn=" + wallTurn.toMillis();
    }
}
