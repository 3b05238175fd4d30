package org.pailbook.records.access;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How often each of many may do one thing a minute: as many times at once, then as they drip in.
 *
 * <p>Kept in this process only, for a bounded number of names; the one not heard of longest is forgotten first.
 */
final class Buckets {
    private static final int MOST_NAMES = 10_000;
    private static final double NANOS_A_SECOND = 1e9;

    private final String policy;
    private final int perMinute;
    private final Map<String, Bucket> byName = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
            return size() > MOST_NAMES;
        }
    };

    /**
     * Where a name stands.
     *
     * @param allowed whether it may now
     * @param remaining how often it may go on at once
     * @param retrySeconds when it may again, if it may not
     * @param resetSeconds when it may as often as ever
     */
    record Standing(
            String policy, int perMinute, boolean allowed, long remaining, long retrySeconds, long resetSeconds) {
        String policyHeader() {
            return "\"" + policy + "\";q=" + perMinute + ";w=60";
        }

        String standingHeader() {
            return "\"" + policy + "\";r=" + remaining + ";t=" + resetSeconds;
        }
    }

    /** @param perMinute 0 for no limit */
    Buckets(String policy, int perMinute) {
        this.policy = policy;
        this.perMinute = perMinute;
    }

    boolean isOff() {
        return perMinute == 0;
    }

    /** Counts one time, if it is allowed. Not to be asked when there is no limit. */
    Standing take(String name) {
        ConsumptionProbe probe = of(name).tryConsumeAndReturnRemaining(1);
        return new Standing(
                policy,
                perMinute,
                probe.isConsumed(),
                probe.getRemainingTokens(),
                seconds(probe.getNanosToWaitForRefill()),
                seconds(probe.getNanosToWaitForReset()));
    }

    /** Where a name stands, without counting. Not to be asked when there is no limit. */
    Standing look(String name) {
        Bucket bucket = of(name);
        var estimate = bucket.estimateAbilityToConsume(1);
        return new Standing(
                policy,
                perMinute,
                estimate.canBeConsumed(),
                estimate.getRemainingTokens(),
                seconds(estimate.getNanosToWaitForRefill()),
                seconds(estimate.getNanosToWaitForRefill()));
    }

    private Bucket of(String name) {
        synchronized (byName) {
            return byName.computeIfAbsent(
                    name,
                    unknown -> Bucket.builder()
                            .addLimit(limit -> limit.capacity(perMinute).refillGreedy(perMinute, Duration.ofMinutes(1)))
                            .build());
        }
    }

    private static long seconds(long nanos) {
        return Math.max(1, (long) Math.ceil(nanos / NANOS_A_SECOND));
    }
}
