package org.pailbook.records.upload;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/** What the cells of one column look like; from the first {@value #MOST_VALUES} of them, so that a question can say what it rests on. */
public final class ColumnLook {
    static final int MOST_VALUES = 20_000;
    private static final int EXAMPLES = 3;

    private final List<String> examples = new ArrayList<>();
    private final List<Double> numbers = new ArrayList<>();
    private int filled;
    private int withPoint;
    private int withComma;
    private int likeThousands;
    private int isoDates;
    private int otherDates;
    private int dayFirst;
    private int monthFirst;
    private String exampleOfDate = "";
    private String exampleWithComma = "";

    void add(String cell) {
        if (cell.isEmpty() || filled == MOST_VALUES) {
            return;
        }
        filled++;
        if (examples.size() < EXAMPLES && !examples.contains(cell)) {
            examples.add(cell);
        }
        if (cell.matches("[+-]?[0-9]{1,12}([.,][0-9]{1,9})?")) {
            withPoint += cell.indexOf('.') >= 0 ? 1 : 0;
            if (cell.indexOf(',') >= 0) {
                withComma++;
                likeThousands += cell.matches("[+-]?[0-9]{1,3},[0-9]{3}") ? 1 : 0;
                exampleWithComma = exampleWithComma.isEmpty() ? cell : exampleWithComma;
            }
            numbers.add(Double.parseDouble(cell.replace(',', '.')));
        }
        FileDates.Parts parts = FileDates.parts(cell);
        if (parts != null && parts.isIso()) {
            isoDates++;
        } else if (parts != null) {
            otherDates++;
            exampleOfDate = exampleOfDate.isEmpty() ? cell : exampleOfDate;
            dayFirst += parts.first() > 12 ? 1 : 0;
            monthFirst += parts.second() > 12 ? 1 : 0;
        }
    }

    /** Some different cells. */
    public List<String> examples() {
        return List.copyOf(examples);
    }

    public int filled() {
        return filled;
    }

    /** Whether most cells are numbers or days, as no heading is. */
    boolean isData() {
        return filled > 0 && 2 * (numbers.size() + isoDates + otherDates) > filled;
    }

    public boolean hasPoints() {
        return withPoint > 0;
    }

    public boolean hasCommas() {
        return withComma > 0;
    }

    /** Whether each comma could part thousands as well as decimals. */
    public boolean hasOnlyDoubtfulCommas() {
        return withComma == likeThousands;
    }

    public String exampleWithComma() {
        return exampleWithComma;
    }

    /** Days that are not written year first. */
    public boolean hasOtherDates() {
        return otherDates > 0;
    }

    public boolean hasDayFirst() {
        return dayFirst > 0;
    }

    public boolean hasMonthFirst() {
        return monthFirst > 0;
    }

    public String exampleOfDate() {
        return exampleOfDate;
    }

    public OptionalDouble most() {
        return numbers.stream().mapToDouble(Double::doubleValue).max();
    }

    public OptionalDouble least() {
        return numbers.stream().mapToDouble(Double::doubleValue).min();
    }

    /** The middle one. */
    public OptionalDouble median() {
        if (numbers.isEmpty()) {
            return OptionalDouble.empty();
        }
        double[] sorted = numbers.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(sorted);
        return OptionalDouble.of(sorted[sorted.length / 2]);
    }
}
