package org.skeinday.platform.record;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/** Acts whose waiter left before there was an answer: what became of them is kept for whoever asks. */
final class LeftBehind {
    /** Own default: of more the record itself must tell. */
    private static final int MOST = 256;

    private final Map<String, CompletableFuture<Answer>> acts = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, CompletableFuture<Answer>> eldest) {
            return size() > MOST;
        }
    };

    synchronized void keep(String act, CompletableFuture<Answer> answer) {
        acts.put(act, answer);
    }

    /** Whether the writer is done with it, whatever came of it. */
    synchronized boolean isDone(String act) {
        CompletableFuture<Answer> answer = acts.get(act);
        return answer == null || answer.isDone();
    }

    synchronized Optional<CompletableFuture<Answer>> find(String act) {
        return Optional.ofNullable(acts.get(act));
    }
}
