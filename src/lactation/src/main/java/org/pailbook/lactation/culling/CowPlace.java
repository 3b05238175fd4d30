package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Where a real cow stands in the table: her month in milk, open, pregnant, or each with a chance.
 *
 * @param parity 1 to 5
 * @param month in milk, 1 or more; it may lie past the table
 * @param pregnantShare chance that she is pregnant
 * @param monthsPregnant 1 to 9 if she may be pregnant, else 0
 * @param pregnantMonth month in milk that stands for hers if she is pregnant: moved to where that pregnancy can begin
 * @param isBred she will be inseminated if she is open
 * @param findings what was assumed
 */
record CowPlace(
        int parity,
        int month,
        double pregnantShare,
        int monthsPregnant,
        int pregnantMonth,
        boolean isBred,
        List<Finding> findings) {

    static CowPlace of(CullingCow cow, LocalDate calvingDate, LocalDate asOf) {
        List<Finding> findings = new ArrayList<>();
        int parity = Math.min(cow.parity(), StageGrid.PARITIES);
        int month = monthOf(ChronoUnit.DAYS.between(calvingDate, asOf));
        double pregnantShare = cow.pregnancy().pregnantShare(asOf);
        int pregnant = 0;
        int pregnantMonth = month;
        if (pregnantShare > 0) {
            pregnant = monthsPregnant(cow.pregnancy(), calvingDate, month);
            pregnantMonth = monthInTable(month, pregnant);
            if (pregnantMonth != month) {
                findings.add(Finding.of(FindingCode.OUTSIDE_VALUE_TABLE)
                        .withSeen(SentenceCode.STAGE_PREGNANT, month, pregnant)
                        .withExpected(SentenceCode.CONCEPTION_COUNTED_AS, pregnantMonth));
            }
        }
        addPregnancyFindings(cow, pregnantShare, findings);
        if (pregnantShare < 1 && isPastTable(month, cow.isToBeBred())) {
            findings.add(Finding.of(FindingCode.OUTSIDE_VALUE_TABLE)
                    .withSeen(SentenceCode.OPEN_IN_MONTH, month)
                    .withExpected(SentenceCode.TABLE_COVERS));
        }
        return new CowPlace(
                parity, month, pregnantShare, pregnant, pregnantMonth, cow.isToBeBred(), List.copyOf(findings));
    }

    /** The same place for a cow surely pregnant that long. */
    CowPlace pregnantFor(int months) {
        return new CowPlace(parity, month, 1, months, monthInTable(month, months), isBred, findings);
    }

    /** The nearest month in milk in which a cow can be pregnant that long. */
    private static int monthInTable(int month, int pregnant) {
        return Math.max(pregnant + StageGrid.BREED_FROM, Math.min(month, pregnant + StageGrid.BREED_TO));
    }

    CowPlace ofParity(int other) {
        return new CowPlace(other, month, pregnantShare, monthsPregnant, pregnantMonth, isBred, findings);
    }

    private static void addPregnancyFindings(CullingCow cow, double pregnantShare, List<Finding> findings) {
        if (cow.pregnancy().kind() == PregnancyState.Kind.INSEMINATED) {
            findings.add(Finding.on(cow.pregnancy().date().orElseThrow(), FindingCode.PREGNANCY_NOT_CHECKED)
                    .withSeen(SentenceCode.INSEMINATED_BY_CHANCE, Amount.number(100 * pregnantShare, Amount.ALL)));
        } else if (cow.pregnancy().kind() == PregnancyState.Kind.PREGNANT_SINCE_ASSUMED) {
            findings.add(Finding.of(FindingCode.CONCEPTION_ASSUMED)
                    .withSeen(cow.pregnancy()
                            .date()
                            .map(day -> Sentence.of(SentenceCode.COUNTED_FROM, day))
                            .orElseGet(() -> Sentence.of(
                                    SentenceCode.DRY_COUNTED_AS,
                                    cow.pregnancy().monthsPregnant().orElseThrow()))));
        } else if (cow.pregnancy().kind() == PregnancyState.Kind.NOT_KNOWN) {
            findings.add(Finding.of(FindingCode.PREGNANCY_NOT_CHECKED).withSeen(SentenceCode.COUNTED_AS_OPEN));
        }
    }

    private static int monthOf(long daysInMilk) {
        return (int) Math.floor(daysInMilk / StageGrid.DAYS_PER_MONTH) + 1;
    }

    /** Counted by months of the lactation, as the table counts: starts of months since the month of conception. */
    private static int monthsPregnant(PregnancyState pregnancy, LocalDate calvingDate, int month) {
        if (pregnancy.monthsPregnant().isPresent()) {
            return pregnancy.monthsPregnant().getAsInt();
        }
        long conceived = ChronoUnit.DAYS.between(calvingDate, pregnancy.date().orElseThrow());
        return Math.min(StageGrid.LONGEST_PREGNANCY, Math.max(1, month - monthOf(conceived)));
    }

    /** An open cow there has no place in the table. */
    static boolean isPastTable(int month, boolean isBred) {
        return isBred ? month > StageGrid.BREED_TO : month >= StageGrid.MONTHS;
    }
}
