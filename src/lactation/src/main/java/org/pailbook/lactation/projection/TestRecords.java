package org.pailbook.lactation.projection;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.BreedGroup;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;
import org.pailbook.lactation.testday.ValueLimit;
import org.pailbook.lactation.testday.ValueLimits;

/**
 * The single measurements of a lactation's test days in the order of the days: trait, day, value. Several traits of a day stand next to
 * each other.
 */
final class TestRecords {
    // the breed is not known here: the range reaches as far as that of any breed
    private static final ValueLimit FAT_LIMIT = accepted("fatPct");
    private static final ValueLimit PROTEIN_LIMIT = accepted("proteinPct");

    private final int[] trait;
    private final int[] day;
    private final int[] test;
    private final double[] value;
    private final double[] extraVarianceShare;
    private final List<Finding> findings;

    private TestRecords(
            int[] trait, int[] day, int[] test, double[] value, double[] extraVarianceShare, List<Finding> findings) {
        this.trait = trait;
        this.day = day;
        this.test = test;
        this.value = value;
        this.extraVarianceShare = extraVarianceShare;
        this.findings = findings;
    }

    /**
     * @param traits wanted; the index in this list is the trait's number
     * @param lastDay later tests are left out
     * @throws IllegalArgumentException if an extra variance is negative
     */
    static TestRecords of(
            UsableTests usable,
            List<LactationTrait> traits,
            int lastDay,
            ToDoubleFunction<TestDay> extraVarianceShare) {
        int most = usable.count() * traits.size();
        int[] trait = new int[most];
        int[] day = new int[most];
        int[] test = new int[most];
        double[] value = new double[most];
        double[] extra = new double[most];
        List<Finding> findings = new ArrayList<>();
        int n = 0;
        for (int t = 0; t < usable.count(); t++) {
            int testDay = usable.daysInMilk(t);
            if (testDay > lastDay) {
                break;
            }
            TestDay measured = usable.tests().get(t);
            double extraShare = extraVarianceShare.applyAsDouble(measured);
            if (!(extraShare >= 0)) {
                throw new IllegalArgumentException("extraVarianceShare (" + extraShare + ") must be 0 or more");
            }
            for (int i = 0; i < traits.size(); i++) {
                double amount = amount(measured, traits.get(i), findings);
                if (!Double.isNaN(amount)) {
                    trait[n] = i;
                    day[n] = testDay;
                    test[n] = t;
                    value[n] = amount;
                    extra[n++] = extraShare;
                }
            }
        }
        return new TestRecords(
                Arrays.copyOf(trait, n),
                Arrays.copyOf(day, n),
                Arrays.copyOf(test, n),
                Arrays.copyOf(value, n),
                Arrays.copyOf(extra, n),
                findings);
    }

    /** NaN where it was not measured or may not be used. */
    private static double amount(TestDay test, LactationTrait trait, List<Finding> findings) {
        return switch (trait) {
            case MILK -> test.milkKg().orElse(Double.NaN);
            case FAT -> component(test, test.fatPct(), FAT_LIMIT, findings);
            case PROTEIN -> component(test, test.proteinPct(), PROTEIN_LIMIT, findings);
            case CELLS -> score(test.sccThousandPerMl());
        };
    }

    private static double component(TestDay test, OptionalDouble pct, ValueLimit accepted, List<Finding> findings) {
        if (pct.isEmpty()) {
            return Double.NaN;
        }
        if (!accepted.holds(pct.getAsDouble())) {
            findings.add(Finding.on(test.date(), FindingCode.OUT_OF_RANGE)
                    .withField(accepted.field())
                    .withSeen(Sentence.verbatim(Amount.measured(pct.getAsDouble(), Amount.ALL, "%")))
                    .withExpected(accepted.said()));
            return Double.NaN;
        }
        return test.milkKg().orElse(Double.NaN) * pct.getAsDouble() / 100;
    }

    private static ValueLimit accepted(String field) {
        return ValueLimits.PUBLISHED
                .of(field, ValueLimit.Layer.ACCEPTED, BreedGroup.UNKNOWN)
                .orElseThrow();
    }

    /** A count of 0 has no logarithm and so no score. */
    private static double score(OptionalDouble sccThousandPerMl) {
        return sccThousandPerMl.isPresent() && sccThousandPerMl.getAsDouble() > 0
                ? Math.log(sccThousandPerMl.getAsDouble() / 100) / Math.log(2) + 3
                : Double.NaN;
    }

    int count() {
        return day.length;
    }

    int trait(int record) {
        return trait[record];
    }

    int day(int record) {
        return day[record];
    }

    /** Index of the test day among the usable ones. */
    int test(int record) {
        return test[record];
    }

    double value(int record) {
        return value[record];
    }

    double extraVarianceShare(int record) {
        return extraVarianceShare[record];
    }

    /** Values that were measured and may not be used. */
    List<Finding> findings() {
        return findings;
    }

    int countOf(int ofTrait) {
        int count = 0;
        for (int one : trait) {
            count += one == ofTrait ? 1 : 0;
        }
        return count;
    }

    /** Says that a trait was not measured on some test days, if so. */
    void addMissing(List<Finding> to, int ofTrait, int tests, FindingCode code, String field) {
        int measured = countOf(ofTrait);
        if (measured < tests) {
            to.add(Finding.of(code).withField(field).withSeen(SentenceCode.OF_TESTS, measured, tests));
        }
    }
}
