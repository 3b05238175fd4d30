package org.pailbook.benchmarks.culling;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.pailbook.lactation.culling.CowStage;
import org.pailbook.lactation.culling.CowValueTable;
import org.pailbook.lactation.culling.CullingPrices;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.KeepOrReplace;

/**
 * The reference decision process of 1,665 stages, one thread, milliseconds a solution: ours whole, from prices to table; plain value iteration on rows that
 * are made before the clock runs, to a last change of 1e-10; and what a herd needs, five tables with the way of not breeding and the long run.
 * Values of both are compared before anything is timed.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class CowValueBenchmark {
    private static final double AGREEMENT_CU = 1e-6;

    private PlainValueIteration plain;

    @Setup
    public void answersMustAgree() {
        plain = new PlainValueIteration(CullingPrices.REFERENCE, HerdParameters.REFERENCE);
        CowValueTable table = exactSolution();
        double[] values = plain.solve();
        for (CowStage stage : CowValueTable.stages()) {
            double difference = Math.abs(table.valueCu(stage) - values[plain.place(stage)]);
            if (!(difference <= AGREEMENT_CU)) {
                throw new IllegalStateException(stage + " differs by " + difference);
            }
        }
    }

    @Benchmark
    public CowValueTable exactSolution() {
        return CowValueTable.solve(CullingPrices.REFERENCE, HerdParameters.REFERENCE);
    }

    @Benchmark
    public double[] plainValueIteration() {
        return plain.solve();
    }

    @Benchmark
    public KeepOrReplace allAHerdNeeds() {
        return KeepOrReplace.with(CullingPrices.REFERENCE, HerdParameters.REFERENCE, List.of());
    }
}
