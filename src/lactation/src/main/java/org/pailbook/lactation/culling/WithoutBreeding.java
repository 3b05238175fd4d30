package org.pailbook.lactation.culling;

/**
 * What keeping an open cow is worth if she is not bred again: kept as long as that pays, then replaced. Worked backwards over months and milk classes
 * from the end of the table; the slot is afterwards worth what the best policy makes of it.
 */
final class WithoutBreeding {
    private final CowValueTable table;
    private final double[][][] keep = new double[StageGrid.PARITIES][StageGrid.MONTHS + 1][StageGrid.CLASSES];

    WithoutBreeding(CowValueTable table) {
        this.table = table;
        for (int parity = 1; parity <= StageGrid.PARITIES; parity++) {
            for (int month = StageGrid.MONTHS - 1; month >= 1; month--) {
                for (int k = 1; k <= StageGrid.CLASSES; k++) {
                    keep[parity - 1][month][k - 1] = keepCu(parity, month, k);
                }
            }
        }
    }

    private double keepCu(int parity, int month, int k) {
        MonthlyAccount account = table.account();
        double discount = account.prices().monthlyDiscountFactor();
        double exit = account.unplannedExitShare(parity, month);
        double next = 0;
        for (int j = 1; j <= StageGrid.CLASSES; j++) {
            next += account.herd().classChangePerMonth().get(k - 1).get(j - 1) * valueCu(parity, month + 1, j);
        }
        double gone = account.prices().unplannedSaleShare() * account.saleCu(parity)
                - account.prices().heiferCu()
                + table.heiferValueCu();
        return account.netCuPerMonth(
                        parity, month, 0, account.herd().classFactors().get(k - 1), false)
                + discount * ((1 - exit) * next + exit * gone);
    }

    private double valueCu(int parity, int month, int k) {
        double replace = replaceCu(parity);
        return month >= StageGrid.MONTHS ? replace : Math.max(replace, keep[parity - 1][month][k - 1]);
    }

    private double replaceCu(int parity) {
        return table.account().saleCu(parity) - table.account().prices().heiferCu() + table.heiferValueCu();
    }

    /** Keeping over replacing now; months 1 to 20. */
    double payoffCu(int parity, int month, int k) {
        return keep[parity - 1][month][k - 1] - replaceCu(parity);
    }

    /** The month at whose start she goes, if she is kept now and stays in her class. */
    int lastMonth(int parity, int month, int k) {
        int last = month + 1;
        while (last < StageGrid.MONTHS && payoffCu(parity, last, k) >= 0) {
            last++;
        }
        return last;
    }
}
