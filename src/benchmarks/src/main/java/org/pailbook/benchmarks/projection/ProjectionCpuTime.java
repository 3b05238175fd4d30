package org.pailbook.benchmarks.projection;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * Projections a second of processor time, the cases of {@link ProjectionBenchmark} in turn. Processor time of the thread and not of the clock, so
 * that a busy machine disturbs it little.
 */
public final class ProjectionCpuTime {
    private static final int ROUNDS = 12;
    private static final int WARM_UP_ROUNDS = 4;
    private static final int PROJECTIONS = 40_000;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    /** Keeps the results alive for the compiler. */
    private static volatile Object sink;

    private ProjectionCpuTime() {}

    /** Prints a line for each case: name, projections a second, median of the rounds. */
    public static void main(String[] args) {
        ProjectionBenchmark cases = new ProjectionBenchmark();
        cases.answersMustAgree();
        print("milk-with-standard-error", cases::milkWithStandardError);
        print("Commons-Math-3.6.1-Cholesky", cases::byCommonsMath);
        print("milk-as-explained-figure", cases::milkAsExplainedFigure);
        print("four-traits", cases::fourTraits);
        print("four-traits-as-explained-figures", cases::fourTraitsAsExplainedFigures);
    }

    private static void print(String name, Supplier<Object> projection) {
        double[] rates = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long before = THREADS.getCurrentThreadCpuTime();
            for (int i = 0; i < PROJECTIONS; i++) {
                sink = projection.get();
            }
            rates[round] = PROJECTIONS * 1e9 / (THREADS.getCurrentThreadCpuTime() - before);
        }
        double[] warm = Arrays.copyOfRange(rates, WARM_UP_ROUNDS, rates.length);
        Arrays.sort(warm);
        System.out.printf(Locale.ROOT, "%s %.0f%n", name, warm[warm.length / 2]);
    }
}
