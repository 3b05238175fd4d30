package org.pailbook.lactation.curve;

import org.pailbook.lactation.internal.Link;
import org.pailbook.lactation.internal.LinkedLeastSquares;
import org.pailbook.lactation.internal.ProfileSearch;

/**
 * Sum of squares over {@code c} of Dijkstra's curve. For one {@code c} it is {@code exp(theta0 + theta1 h(t) - theta2 t)} with
 * {@code h(t) = 1 - exp(-c (t - first))}: counted from the first test, the column keeps its digits for every {@code c}.
 */
final class DijkstraProfile implements ProfileSearch.Profile {
    private final double[] daysInMilk;
    private final double[] milkKg;
    private final double firstDay;
    private final double[] columns;
    private final LinkedLeastSquares solver;
    private final double[] theta = new double[LinkedLeastSquares.COLUMNS];

    DijkstraProfile(double[] daysInMilk, double[] milkKg, double firstDay) {
        this.daysInMilk = daysInMilk;
        this.milkKg = milkKg;
        this.firstDay = firstDay;
        this.columns = new double[LinkedLeastSquares.COLUMNS * daysInMilk.length];
        for (int i = 0; i < daysInMilk.length; i++) {
            columns[LinkedLeastSquares.COLUMNS * i] = 1;
            columns[LinkedLeastSquares.COLUMNS * i + 2] = -daysInMilk[i];
        }
        this.solver = new LinkedLeastSquares(Link.EXPONENTIAL, columns, milkKg);
    }

    @Override
    public double rss(double c) {
        for (int i = 0; i < daysInMilk.length; i++) {
            columns[LinkedLeastSquares.COLUMNS * i + 1] = -Math.expm1(-c * (daysInMilk[i] - firstDay));
        }
        return solver.startFromData(theta) && solver.minimize(theta) ? solver.rss() : Double.POSITIVE_INFINITY;
    }

    @Override
    public double slope(double c) {
        if (!Double.isFinite(rss(c))) {
            return Double.NaN;
        }
        double sum = 0;
        for (int i = 0; i < daysInMilk.length; i++) {
            int at = LinkedLeastSquares.COLUMNS * i;
            double fitted = Math.exp(theta[0] + theta[1] * columns[at + 1] + theta[2] * columns[at + 2]);
            double since = daysInMilk[i] - firstDay;
            sum -= 2 * (milkKg[i] - fitted) * fitted * theta[1] * since * Math.exp(-c * since);
        }
        return sum;
    }

    /** The best curve with that {@code c}: back from the first test to calving. */
    DijkstraCurve curveAt(double c) {
        rss(c);
        double growth = theta[1] * Math.exp(c * firstDay);
        return new DijkstraCurve(Math.exp(theta[0] + growth * Math.expm1(-c * firstDay)), growth * c, c, theta[2]);
    }
}
