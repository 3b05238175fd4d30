package org.pailbook.picture;

import java.util.List;
import java.util.stream.IntStream;

/** Values at which lines lie across a picture, from 0: 1, 2 or 5 times a power of ten apart, so that few lines suffice in any unit. */
final class Levels {
    private static final int MOST_STEPS = 6;

    private Levels() {}

    /** The last one is not below the most there is; whole numbers. */
    static List<Double> upTo(double most) {
        double step = step(most);
        return IntStream.rangeClosed(0, Math.max(1, (int) Math.ceil(most / step)))
                .mapToObj(i -> i * step)
                .toList();
    }

    static double top(List<Double> levels) {
        return levels.get(levels.size() - 1);
    }

    private static double step(double most) {
        double power = Math.max(1, Math.pow(10, Math.floor(Math.log10(Math.max(1, most))) - 1));
        for (double times : new double[] {1, 2, 5, 10, 20, 50}) {
            if (most / (power * times) <= MOST_STEPS) {
                return power * times;
            }
        }
        return power * 100;
    }
}
