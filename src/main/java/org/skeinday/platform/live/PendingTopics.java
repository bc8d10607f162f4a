package org.skeinday.platform.live;

import java.time.Duration;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;

/** What one page has not been told yet: a set of topics, so that a slow page never makes it grow without bound. */
final class PendingTopics {
    private final Set<String> wanted;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition changed = lock.newCondition();
    private final Set<String> topics = new TreeSet<>();
    private long n;
    private boolean closed;

    record Hint(Set<String> topics, long n) {}

    PendingTopics(Set<String> wanted) {
        this.wanted = Set.copyOf(wanted);
    }

    void offer(Set<String> published, long at) {
        lock.lock();
        try {
            if (published.stream().filter(wanted::contains).map(topics::add).count() > 0) {
                n = Math.max(n, at);
                changed.signalAll();
            }
        } finally {
            lock.unlock();
        }
    }

    void close() {
        lock.lock();
        try {
            closed = true;
            changed.signalAll();
        } finally {
            lock.unlock();
        }
    }

    boolean isClosed() {
        lock.lock();
        try {
            return closed;
        } finally {
            lock.unlock();
        }
    }

    /** Waits for a first hint, then a little longer for those that come with it; empty after {@code most}. */
    Hint take(Duration most, Duration gather) throws InterruptedException {
        lock.lock();
        try {
            long left = most.toNanos();
            while (topics.isEmpty() && !closed && left > 0) {
                left = changed.awaitNanos(left);
            }
            if (!topics.isEmpty()) {
                gatherFor(gather);
            }
            Hint hint = new Hint(Set.copyOf(topics), n);
            topics.clear();
            return hint;
        } finally {
            lock.unlock();
        }
    }

    private void gatherFor(Duration gather) throws InterruptedException {
        long left = gather.toNanos();
        while (left > 0 && !closed) {
            left = changed.awaitNanos(left);
        }
    }
}
