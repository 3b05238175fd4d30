package org.pailbook.lactation.culling;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * All 1,665 stages in the order in which they follow each other, and the place of each. Ours, after the models of van Arendonk and De Vries: 5
 * parities, 111 pairs of month in milk and months pregnant, 3 milk classes.
 */
final class StageGrid {
    static final int PARITIES = 5;
    static final int MONTHS = 21;
    static final int LONGEST_PREGNANCY = 9;
    static final int CLASSES = 3;
    /** She can conceive in these months in milk. */
    static final int BREED_FROM = 3;

    static final int BREED_TO = 12;
    /** Months 8 and 9 of the pregnancy, 61 days, are dry. */
    static final int FIRST_DRY_MONTH = 8;

    static final double DAYS_PER_MONTH = 30.4375;

    static final List<CowStage> ALL;
    private static final int[] PLACE = new int[PARITIES * MONTHS * (LONGEST_PREGNANCY + 1)];

    static {
        List<CowStage> all = new ArrayList<>();
        Arrays.fill(PLACE, -1);
        for (int parity = 1; parity <= PARITIES; parity++) {
            for (int month = 1; month <= MONTHS; month++) {
                for (int pregnant = 0; pregnant <= LONGEST_PREGNANCY; pregnant++) {
                    if (holds(month, pregnant)) {
                        PLACE[pair(parity, month, pregnant)] = all.size();
                        for (int k = 1; k <= CLASSES; k++) {
                            all.add(new CowStage(parity, month, pregnant, k));
                        }
                    }
                }
            }
        }
        ALL = List.copyOf(all);
    }

    private StageGrid() {}

    private static int pair(int parity, int month, int pregnant) {
        return ((parity - 1) * MONTHS + month - 1) * (LONGEST_PREGNANCY + 1) + pregnant;
    }

    static boolean holds(int month, int pregnant) {
        if (month < 1 || month > MONTHS || pregnant < 0 || pregnant > LONGEST_PREGNANCY) {
            return false;
        }
        return pregnant == 0 || (month - pregnant >= BREED_FROM && month - pregnant <= BREED_TO);
    }

    static int index(int parity, int month, int pregnant, int milkClass) {
        return PLACE[pair(parity, month, pregnant)] + milkClass - 1;
    }

    static int index(CowStage stage) {
        return index(stage.parity(), stage.monthInMilk(), stage.monthsPregnant(), stage.milkClass());
    }

    static boolean isBreedingMonth(int month) {
        return month >= BREED_FROM && month <= BREED_TO;
    }
}
