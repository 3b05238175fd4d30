package org.pailbook.records.page;

import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.testday.BreedGroup;
import org.pailbook.lactation.testday.ValueLimit;
import org.pailbook.lactation.testday.ValueLimits;
import org.pailbook.records.entry.SheetCell;

/** Values of a sheet between the unit they are typed in and the one they are kept in. */
record SheetUnits(MilkUnit milk) {
    private static final int POUND_DECIMALS = 1;

    double kept(SheetCell cell, double typed) {
        return cell.isMilk() ? milk.toKg(typed) : typed;
    }

    /** What a field shows of a value kept. */
    String shown(SheetCell cell, double kept) {
        return cell.isMilk() && milk == MilkUnit.LB
                ? TypedNumber.rounded(milk.of(kept), POUND_DECIMALS)
                : TypedNumber.whole(kept);
    }

    /**
     * What somebody typed where something was seen: what was seen, if the field still says that, though it may show fewer digits.
     *
     * @return empty if it is no number
     */
    Optional<Double> typed(SheetCell cell, String text, Optional<Double> seen) {
        String plain = text.replace(',', '.');
        if (seen.isPresent() && shown(cell, seen.get()).equals(plain)) {
            return seen;
        }
        return TypedNumber.parse(text).map(number -> kept(cell, number));
    }

    /** The most that can be right, in the unit of the field. */
    String most(SheetCell cell) {
        OptionalDouble most = ValueLimits.PUBLISHED
                .of(cell.limit(), ValueLimit.Layer.POSSIBLE, BreedGroup.UNKNOWN)
                .map(ValueLimit::most)
                .orElse(OptionalDouble.empty());
        return most.isEmpty()
                ? ""
                : TypedNumber.rounded(cell.isMilk() ? milk.of(most.getAsDouble()) : most.getAsDouble(), 1);
    }

    /** An end of what is expected, in the unit of the field; a plain number for the script to hold what is typed against. */
    String end(double kg) {
        return TypedNumber.rounded(Math.max(0, milk.of(kg)), 1);
    }

    String label(SheetCell cell) {
        return PageWords.word("sheet.cell." + cell.wireName()) + (cell.isMilk() ? ", " + milk.wireName() : "");
    }

    static String name(SheetCell cell, String animalId) {
        return "c." + animalId + "." + cell.wireName();
    }

    static String seenName(SheetCell cell, String animalId) {
        return "s." + animalId + "." + cell.wireName();
    }
}
