package org.pailbook.lactation.culling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;

/** Compares rows of the reference program's output with the table of the reference set. */
final class CowValueRows {
    private static final double TOLERANCE = 1e-6;
    private static final CowValueTable TABLE = CowValueTable.solve(CullingPrices.REFERENCE, HerdParameters.REFERENCE);

    private CowValueRows() {}

    /** @return number of rows compared */
    static int compare(List<String> lines) {
        int rows = 0;
        for (String line : lines) {
            if (!line.startsWith("#") && !line.startsWith("parity")) {
                compare(line);
                rows++;
            }
        }
        return rows;
    }

    private static void compare(String line) {
        String[] cell = line.split(",", -1);
        CowStage stage = new CowStage(
                Integer.parseInt(cell[0]),
                Integer.parseInt(cell[1]),
                Integer.parseInt(cell[2]),
                Integer.parseInt(cell[3]));
        same(stage, cell[4], OptionalDouble.of(TABLE.milkKgPerDay(stage)));
        same(stage, cell[5], OptionalDouble.of(TABLE.dryMatterKgPerDay(stage)));
        same(stage, cell[6], OptionalDouble.of(TABLE.netCuPerMonth(stage)));
        same(stage, cell[7], OptionalDouble.of(TABLE.valueCu(stage)));
        same(stage, cell[8], TABLE.keepValueCu(stage));
        same(stage, cell[9], OptionalDouble.of(TABLE.replaceValueCu(stage)));
        same(stage, cell[10], TABLE.retentionPayoffCu(stage));
        assertThat(TABLE.isKept(stage)).as("%s", stage).isEqualTo(cell[11].equals("KEEP"));
        same(stage, cell[12], TABLE.pregnancyValueCu(stage));
    }

    private static void same(CowStage stage, String cell, OptionalDouble ours) {
        assertThat(ours.isPresent()).as("%s has a value", stage).isEqualTo(!cell.isEmpty());
        ours.ifPresent(
                value -> assertThat(value).as("%s", stage).isCloseTo(Double.parseDouble(cell), within(TOLERANCE)));
    }
}
