package org.pailbook.lactation.testday;

import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.Milking.Session;

/**
 * One milking of two, morning or evening, brought to 24 hours by the share that milking has of the day in this herd: {@code milk / share}.
 *
 * <p>The share is learned from the days on which both were weighed, {@code sum(AM) / sum(AM + PM)}, and drawn toward a reference share
 * with the weight of {@value #SHRINKAGE_COW_DAYS} cow-days (ours): {@code (n x herd + 20 x reference) / (n + 20)}. Doubling is right only
 * for equal halves; in one open data set the morning holds 60.8 % and doubling the evening is 22 % low.
 *
 * <p>Protein percent of the one milking stands for the day; fat percent depends much on which it was (evening milk is fatter) and the
 * figure says so.
 *
 * @see "Wu, X. L. et al. (2022). Front. Genet. 13:943705, abstract: doubling is wrong unless intervals are 12:12"
 */
public final class MilkingShares implements DailyYieldMethod {
    /** Weight of the reference share, cow-days. Ours. */
    static final int SHRINKAGE_COW_DAYS = 20;

    private final double amShare;
    private final int pairedCowDays;

    private MilkingShares(double amShare, int pairedCowDays) {
        this.amShare = amShare;
        this.pairedCowDays = pairedCowDays;
    }

    /**
     * Learns the morning's share of two milkings.
     *
     * @param days any; those milked twice with both weighed count
     * @param referenceAmShare what to expect without data, above 0 and below 1: hours since the evening milking over 24 is a fair one
     * @throws IllegalArgumentException if the reference is outside
     */
    public static MilkingShares learn(List<MilkedDay> days, double referenceAmShare) {
        double amKg = 0;
        double dayKg = 0;
        int paired = 0;
        for (MilkedDay day : days) {
            Optional<Milking> am = day.milking(Session.AM);
            Optional<Milking> pm = day.milking(Session.PM);
            if (day.milkingsPerDay() == 2 && am.isPresent() && pm.isPresent()) {
                amKg += am.get().milkKg();
                dayKg += am.get().milkKg() + pm.get().milkKg();
                paired++;
            }
        }
        return ofSums(amKg, dayKg, paired, referenceAmShare);
    }

    /**
     * The same from sums over the paired days.
     *
     * @param amKg morning milk of all cow-days with both milkings, kg
     * @param dayKg milk of both, kg
     * @param pairedCowDays how many there are
     * @param referenceAmShare as above
     */
    public static MilkingShares ofSums(double amKg, double dayKg, int pairedCowDays, double referenceAmShare) {
        if (!(referenceAmShare > 0 && referenceAmShare < 1)) {
            throw new IllegalArgumentException("referenceAmShare (" + referenceAmShare + ") must lie between 0 and 1");
        }
        double herdShare = dayKg > 0 ? amKg / dayKg : referenceAmShare;
        return new MilkingShares(
                (pairedCowDays * herdShare + SHRINKAGE_COW_DAYS * referenceAmShare)
                        / (pairedCowDays + SHRINKAGE_COW_DAYS),
                pairedCowDays);
    }

    /** Share of the day's milk that the morning milking has, as learned. */
    public double amShare() {
        return amShare;
    }

    /** Cow-days with both milkings that it was learned from. */
    public int pairedCowDays() {
        return pairedCowDays;
    }

    @Override
    public Outcome milkOf(MilkedDay day) {
        if (day.isWeighedWhole()) {
            return SumOfMilkings.ICAR.milkOf(day);
        }
        Milking milking = day.milkings().get(0);
        double share = milking.session() == Session.AM ? amShare : 1 - amShare;
        if (day.milkingsPerDay() != 2 || milking.session() == Session.MIDDAY) {
            return new Outcome(
                    List.of(),
                    List.of(Finding.on(day.date(), FindingCode.MILKING_FACTOR_UNKNOWN)
                            .withSeen(
                                    SentenceCode.SESSION_OF_MILKINGS,
                                    milking.session().toString(),
                                    day.milkingsPerDay())
                            .withExpected(SentenceCode.ONE_OF_TWO)));
        }
        String words = milking.session() + ": " + Rounding.halfUp(milking.milkKg(), 1) + " kg / "
                + Rounding.halfUp(share, 4) + " of the day";
        return new Outcome(
                List.of(new Explanation.Part(words, milking.milkKg() / share)),
                List.of(Finding.on(day.date(), FindingCode.PART_OF_DAY_WEIGHED)
                        .withSeen(SentenceCode.SHARE_LEARNED, pairedCowDays)));
    }

    @Override
    public String id() {
        return "daily-learned-share";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Pailbook",
                2026,
                "milk / share of the milking, share learned from the herd's paired days",
                HowKnown.OURS);
    }
}
