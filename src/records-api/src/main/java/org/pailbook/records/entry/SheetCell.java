package org.pailbook.records.entry;

import java.time.LocalTime;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.pailbook.records.store.MilkingRow;
import org.pailbook.records.store.TestDayRow;

/**
 * What can be typed of a cow. A milking is kept as a milking, with an hour that stands for it since nobody writes one down; the milk of the whole
 * day, fat, protein and cells belong to the test day, which takes the milk of the milkings if it has none itself.
 */
public enum SheetCell {
    /** Milk of the whole day, kg. */
    DAY,
    AM(LocalTime.of(6, 0)),
    PM(LocalTime.of(16, 0)),
    THIRD(LocalTime.of(22, 0)),
    /** Percent by mass. */
    FAT,
    /** Percent by mass. */
    PROTEIN,
    /** Somatic cells, 1,000 per mL. */
    CELLS;

    private static final List<SheetCell> SAMPLE = List.of(FAT, PROTEIN, CELLS);

    /** What a test day holds. */
    static final Set<SheetCell> OF_TEST_DAY = EnumSet.of(DAY, FAT, PROTEIN, CELLS);

    private final LocalTime hour;

    SheetCell() {
        this(null);
    }

    SheetCell(LocalTime hour) {
        this.hour = hour;
    }

    /** The cells for milk, with so many milkings a day. */
    public static List<SheetCell> ofMilk(int milkings) {
        return milkings == 1 ? List.of(DAY) : List.of(AM, PM, THIRD).subList(0, milkings);
    }

    public static List<SheetCell> ofSample() {
        return SAMPLE;
    }

    public static Optional<SheetCell> of(String wireName) {
        return Arrays.stream(values())
                .filter(cell -> cell.wireName().equals(wireName))
                .findFirst();
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether it is milk, in kg. */
    public boolean isMilk() {
        return !SAMPLE.contains(this);
    }

    boolean isMilking() {
        return hour != null;
    }

    /** The hour a new milking is put at; only for a milking. */
    LocalTime hour() {
        return hour;
    }

    /** Member of the record that holds it. */
    String member() {
        return switch (this) {
            case DAY, AM, PM, THIRD -> "milkKg";
            case FAT -> "fatPct";
            case PROTEIN -> "proteinPct";
            case CELLS -> "sccThousandPerMl";
        };
    }

    /** Its name in the library's limits of values. */
    public String limit() {
        return isMilking() ? "milking.milkKg" : member();
    }

    Double in(TestDayRow test) {
        return switch (this) {
            case DAY -> test.milkKg;
            case FAT -> test.fatPct;
            case PROTEIN -> test.proteinPct;
            case CELLS -> test.sccThousandPerMl;
            default -> null;
        };
    }

    boolean isOf(MilkingRow milking) {
        return wireName().equals(milking.milkingOfDay);
    }
}
