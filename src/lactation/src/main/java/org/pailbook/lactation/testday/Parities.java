package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Which parity each calving has: as recorded where that can be, else counted on.
 *
 * <p>A recorded parity above the count is believed (calvings before a purchase or between are not on record) and flagged; one at or below
 * the parity before it is not, and flagged. Calvings before the first recorded parity are counted back from it. Ours.
 */
final class Parities {
    private Parities() {}

    /**
     * @param dates of the calvings, in order
     * @param recorded parity of each, where on record
     * @param findings one list a calving; what is noticed is added there
     */
    static int[] of(List<LocalDate> dates, List<OptionalInt> recorded, List<List<Finding>> findings) {
        int[] parity = new int[dates.size()];
        int firstRecorded = 0;
        while (firstRecorded < parity.length && recorded.get(firstRecorded).isEmpty()) {
            firstRecorded++;
        }
        for (int i = 0; i < parity.length; i++) {
            int counted = i > 0 ? parity[i - 1] + 1 : 1;
            if (i == 0 && firstRecorded > 0 && firstRecorded < parity.length) {
                counted = Math.max(1, recorded.get(firstRecorded).getAsInt() - firstRecorded);
            }
            OptionalInt own = recorded.get(i);
            parity[i] =
                    own.isPresent() && own.getAsInt() > counted || i == 0 && own.isPresent() ? own.getAsInt() : counted;
            if (i > 0 && own.isPresent() && own.getAsInt() != counted) {
                findings.get(i)
                        .add(Finding.on(dates.get(i), FindingCode.PARITY_CONTRADICTS)
                                .withField("parity")
                                .withSeen(SentenceCode.PARITY, own.getAsInt())
                                .withExpected(SentenceCode.PARITY, counted));
            }
        }
        if (parity.length > 0 && firstRecorded == parity.length) {
            findings.get(0)
                    .add(Finding.on(dates.get(0), FindingCode.PARITY_COUNTED).withField("parity"));
        }
        return parity;
    }
}
