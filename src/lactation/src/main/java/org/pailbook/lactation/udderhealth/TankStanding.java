package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Where the tank stands against a limit that the user chose. It never says that milk is legal or not: ask your buyer or authority.
 *
 * @param limit the one chosen
 * @param standing where
 * @param value what is held against the limit, 1,000 per mL: a geometric mean or the last sample; empty with too few samples
 * @param samplesUsed in it, in order
 * @param said one sentence
 */
public record TankStanding(
        TankLimit limit, Standing standing, OptionalDouble value, List<TankSample> samplesUsed, Sentence said) {
    /** Near from this share of the limit on; ours. */
    public static final double NEAR_FROM = 0.80;

    private static final int MEAN_OF = 3;

    /** Where a tank stands. */
    public enum Standing {
        TOO_FEW_SAMPLES("tooFewSamples"),
        BELOW("below"),
        NEAR("near"),
        ABOVE("above");

        private final String wireName;

        Standing(String wireName) {
            this.wireName = wireName;
        }

        public String wireName() {
            return wireName;
        }
    }

    public TankStanding {
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(standing, "standing");
        Objects.requireNonNull(value, "value");
        samplesUsed = List.copyOf(samplesUsed);
        Objects.requireNonNull(said, "said");
    }

    /** In English. */
    public String words() {
        return said.text();
    }

    /** Geometric mean: {@code exp(mean(ln count))}. */
    public static double geometricMean(List<TankSample> samples) {
        return Math.exp(samples.stream()
                .mapToDouble(sample -> Math.log(sample.sccThousandPerMl()))
                .average()
                .orElseThrow());
    }

    /**
     * @param samples in any order; later ones than the day, and doubles, take no part
     * @param asOf months are counted back from it
     */
    public static TankStanding of(TankLimit limit, List<TankSample> samples, LocalDate asOf) {
        List<TankSample> known = samples.stream()
                .distinct()
                .filter(sample -> !sample.date().isAfter(asOf))
                .sorted(Comparator.comparing(TankSample::date))
                .toList();
        return switch (limit.rule()) {
            case GEOMETRIC_MEAN_OF_MONTHS -> ofMonths(limit, known, asOf);
            case MEANS_OF_THREE_IN_A_ROW -> ofMeansInARow(limit, known);
            case COUNT_OF_SAMPLES -> ofCount(limit, known);
            case EACH_SAMPLE -> ofLast(limit, known);
        };
    }

    private static TankStanding ofMonths(TankLimit limit, List<TankSample> known, LocalDate asOf) {
        List<TankSample> used = known.stream()
                .filter(sample -> sample.date().isAfter(asOf.minusMonths(limit.samples())))
                .toList();
        for (int month = 0; month < limit.samples(); month++) {
            LocalDate to = asOf.minusMonths(month);
            LocalDate from = asOf.minusMonths(month + 1L);
            if (used.stream()
                    .noneMatch(sample ->
                            sample.date().isAfter(from) && !sample.date().isAfter(to))) {
                return tooFew(limit, used, Sentence.of(SentenceCode.NO_SAMPLE_FROM, from.plusDays(1), to));
            }
        }
        double mean = geometricMean(used);
        return standing(
                limit,
                mean > limit.limitThousandPerMl(),
                mean,
                used,
                Sentence.of(SentenceCode.MEAN_OF_MONTHS, used.size(), limit.samples()));
    }

    private static TankStanding ofMeansInARow(TankLimit limit, List<TankSample> known) {
        int needed = limit.mostAbove() + MEAN_OF - 1;
        if (known.size() < needed) {
            return tooFew(limit, known, Sentence.of(SentenceCode.SAMPLES_OF, known.size(), needed));
        }
        List<TankSample> used = known.subList(known.size() - needed, known.size());
        List<Double> means = new ArrayList<>();
        for (int i = 0; i < limit.mostAbove(); i++) {
            means.add(geometricMean(used.subList(i, i + MEAN_OF)));
        }
        boolean above = means.stream().allMatch(mean -> mean > limit.limitThousandPerMl());
        return standing(
                limit, above, means.get(means.size() - 1), used, Sentence.of(SentenceCode.LAST_OF_MEANS, means.size()));
    }

    private static TankStanding ofCount(TankLimit limit, List<TankSample> known) {
        if (known.size() < limit.samples()) {
            return tooFew(limit, known, Sentence.of(SentenceCode.SAMPLES_OF, known.size(), limit.samples()));
        }
        List<TankSample> used = known.subList(known.size() - limit.samples(), known.size());
        long above = used.stream()
                .filter(sample -> sample.sccThousandPerMl() > limit.limitThousandPerMl())
                .count();
        return standing(
                limit,
                above >= limit.mostAbove(),
                used.get(used.size() - 1).sccThousandPerMl(),
                used,
                Sentence.of(SentenceCode.SAMPLES_ABOVE, above, used.size()));
    }

    private static TankStanding ofLast(TankLimit limit, List<TankSample> known) {
        if (known.isEmpty()) {
            return tooFew(limit, known, Sentence.of(SentenceCode.NO_SAMPLE));
        }
        TankSample last = known.get(known.size() - 1);
        return standing(
                limit,
                last.sccThousandPerMl() > limit.limitThousandPerMl(),
                last.sccThousandPerMl(),
                List.of(last),
                Sentence.of(SentenceCode.LAST_SAMPLE, last.date()));
    }

    private static TankStanding tooFew(TankLimit limit, List<TankSample> used, Sentence why) {
        return new TankStanding(
                limit,
                Standing.TOO_FEW_SAMPLES,
                OptionalDouble.empty(),
                used,
                Sentence.of(SentenceCode.TANK_TOO_FEW_SAMPLES, why));
    }

    private static TankStanding standing(
            TankLimit limit, boolean above, double value, List<TankSample> used, Sentence what) {
        Standing standing = above
                ? Standing.ABOVE
                : value >= NEAR_FROM * limit.limitThousandPerMl() ? Standing.NEAR : Standing.BELOW;
        Sentence said = Sentence.of(
                SentenceCode.TANK_STANDS_AT,
                what,
                Math.round(value),
                Math.round(limit.limitThousandPerMl()),
                limit.place());
        return new TankStanding(limit, standing, OptionalDouble.of(value), used, said);
    }
}
