package org.pailbook.lactation.reference;

import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;

/**
 * The standards of one group of cows for several traits, and how the traits go together: milk alone, or milk, fat and protein; the cell
 * score stands beside them on its own.
 *
 * <p>{@code Cov(i on day t, j on day s) = sd_i(t) sd_j(s) (B_ij r^|g(t) - g(s)| + E_ij [t = s])}. {@code B_ij} is the lasting correlation times the
 * roots of both traits' lasting shares, {@code E_ij} likewise for single days. The yields share the fading over time of milk. Immutable.
 */
public final class TraitStandards {
    private final List<LactationTrait> traits;
    private final LactationStandard[] standards;
    private final double[][] lasting;
    private final double[][] daily;
    private final double[][] herd;
    private final Optional<LactationStandard> cells;

    private TraitStandards(
            List<LactationTrait> traits,
            LactationStandard[] standards,
            TraitCorrelations correlations,
            Optional<LactationStandard> cells) {
        this.traits = traits;
        this.standards = standards;
        this.cells = cells;
        int n = standards.length;
        lasting = new double[n][n];
        daily = new double[n][n];
        herd = new double[n][n];
        for (int i = 0; i < n; i++) {
            double dailyShareI = standards[i].spread().dailyErrorShare();
            for (int j = 0; j < n; j++) {
                double dailyShareJ = standards[j].spread().dailyErrorShare();
                lasting[i][j] = correlations.lasting(i, j) * Math.sqrt((1 - dailyShareI) * (1 - dailyShareJ));
                daily[i][j] = correlations.daily(i, j) * Math.sqrt(dailyShareI * dailyShareJ);
                // herds that give more milk give more fat and protein about as cows do
                herd[i][j] = correlations.lasting(i, j)
                        * standards[i].herdLevelSdKgPerDay()
                        * standards[j].herdLevelSdKgPerDay();
            }
        }
    }

    /** One trait on its own. */
    public static TraitStandards single(LactationTrait trait, LactationStandard standard) {
        return new TraitStandards(
                List.of(trait), new LactationStandard[] {standard}, TraitCorrelations.single(), Optional.empty());
    }

    /**
     * Milk, fat and protein together.
     *
     * @param correlations of the three, in this order
     * @throws IllegalArgumentException if fat or protein fade over time in another way than milk
     */
    public static TraitStandards ofYields(
            LactationStandard milk, LactationStandard fat, LactationStandard protein, TraitCorrelations correlations) {
        if (correlations.traits() != 3) {
            throw new IllegalArgumentException("correlations (" + correlations.traits() + " traits) must be of 3");
        }
        for (LactationStandard other : List.of(fat, protein)) {
            for (int day : new int[] {2, 30, 305}) {
                double ofMilk = milk.spread().lastingCorrelation(1, day);
                if (Math.abs(other.spread().lastingCorrelation(1, day) - ofMilk) > 1e-12) {
                    throw new IllegalArgumentException("fat and protein must fade over time as milk does");
                }
            }
        }
        return new TraitStandards(
                List.of(LactationTrait.MILK, LactationTrait.FAT, LactationTrait.PROTEIN),
                new LactationStandard[] {milk, fat, protein},
                correlations,
                Optional.empty());
    }

    /** The same with a standard for the cell score, which is predicted on its own. */
    public TraitStandards withCells(LactationStandard ofScore) {
        return new TraitStandards(this, Optional.of(ofScore));
    }

    private TraitStandards(TraitStandards other, Optional<LactationStandard> cells) {
        this.traits = other.traits;
        this.standards = other.standards;
        this.lasting = other.lasting;
        this.daily = other.daily;
        this.herd = other.herd;
        this.cells = cells;
    }

    /** Traits predicted together; the first of them is milk, but for the cell score on its own. */
    public List<LactationTrait> traits() {
        return traits;
    }

    /** Standard of the trait with that index in {@link #traits()}. */
    public LactationStandard standard(int index) {
        return standards[index];
    }

    /** Standard of the first trait. */
    public LactationStandard first() {
        return standards[0];
    }

    public Optional<LactationStandard> cells() {
        return cells;
    }

    /** B_ij: covariance of lasting parts in standard deviations of a day. */
    public double lasting(int index, int otherIndex) {
        return lasting[index][otherIndex];
    }

    /** E_ij: covariance of single days' parts in standard deviations of a day. */
    public double daily(int index, int otherIndex) {
        return daily[index][otherIndex];
    }

    /** Covariance of what is not known of the herd's levels, per day. */
    public double herdLevel(int index, int otherIndex) {
        return herd[index][otherIndex];
    }

    /** What has to be said of every figure made from them. */
    public List<Finding> findings() {
        return standards[0].findings();
    }
}
