package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class AlikeTest {
    private final AtomicLong n = new AtomicLong(7);
    private final AtomicLong ms = new AtomicLong(10_000);
    private final AtomicInteger made = new AtomicInteger();
    private final Alike<String> parts = new Alike<>();
    private final Clock clock = new Clock() {
        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return Instant.ofEpochMilli(ms.get());
        }
    };

    private static RecordMoment at(long number) {
        return new RecordMoment("run", number);
    }

    private String part(String key, RecordMoment asked, Supplier<String> make) {
        return parts.of(key, asked, () -> at(n.get()), clock, make);
    }

    private String part(long asked) {
        return part("key", at(asked), () -> "made " + made.incrementAndGet());
    }

    @Test
    void it_is_made_once_for_all_who_ask_in_one_moment() {
        assertEquals("made 1", part(7));
        assertEquals("made 1", part(7));
        assertEquals("made 2", part("other", at(7), () -> "made " + made.incrementAndGet()));
    }

    @Test
    void a_change_of_the_record_and_another_second_of_the_clock_make_it_anew() {
        part(7);
        n.set(8);
        assertEquals("made 2", part(8));
        ms.addAndGet(1000);
        assertEquals("made 3", part(8));
        ms.addAndGet(-3_600_000);
        assertEquals("made 4", part(8), "a clock that was set back leaves no page an hour ahead");
    }

    @Test
    void who_asked_before_it_was_begun_takes_it_though_the_record_went_on() {
        n.set(9);
        assertEquals("made 1", part(7), "asked at 7, made of what was there at 9");
        assertEquals("made 1", part(9));
        assertEquals("made 1", part(8));
        assertEquals("made 2", part("key", new RecordMoment("another run", 1), () -> "made " + made.incrementAndGet()));
    }

    @Test
    void a_rush_that_comes_while_it_is_made_makes_it_once_more_and_not_for_each() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        ExecutorService devices = Executors.newFixedThreadPool(21);
        Future<String> first = devices.submit(() -> part("key", at(7), () -> {
            begun.countDown();
            await(goOn);
            return "made " + made.incrementAndGet();
        }));
        await(begun);
        n.set(30);
        AtomicInteger asking = new AtomicInteger();
        var rush = java.util.stream.LongStream.range(8, 28)
                .mapToObj(asked -> devices.submit(() -> {
                    asking.incrementAndGet();
                    return part(asked);
                }))
                .toList();
        while (asking.get() < 20) {
            Thread.onSpinWait();
        }
        goOn.countDown();
        assertEquals("made 1", first.get());
        for (Future<String> one : rush) {
            assertEquals("made 2", one.get());
        }
        devices.shutdown();
    }

    @Test
    void what_failed_is_tried_again_by_the_next() {
        assertThrows(
                IllegalStateException.class,
                () -> part("key", at(7), () -> {
                    throw new IllegalStateException("not now");
                }));
        assertEquals("made 1", part(7));
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
