package org.pailbook.records.upload;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.summary.HerdTestDay;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.intake.Column;

/** What must be asked about a file because a wrong guess would give plausible figures; each with what the file shows. */
public final class Questions {
    /** Above it the middle of a column of kilograms is odd: no herd's mean of a day is higher. Ours. */
    private static final double ODD_MEDIAN_KG_DAY = 45;

    private static final double ODD_MEDIAN_KG_MILKING = 22;
    /** Above it somebody confirms a weight of a day by hand; ICAR's range ends there (from memory). */
    private static final double ODD_MOST_KG = 99.9;
    /** Thousand cells per mL; a middle above points at single cells. Ours. */
    private static final double ODD_MEDIAN_CELLS = 5_000;

    private static final double ODD_MOST_CELLS = 20_000;

    /**
     * A question about the unit of a column.
     *
     * @param column ours
     * @param place of the file's column
     * @param units to choose from
     * @param isOdd whether the values or the heading do not fit our unit, so that somebody must say
     * @param byHeading a unit the heading names
     */
    public record OfUnit(
            String column,
            int place,
            List<FileUnit> units,
            boolean isOdd,
            Optional<FileUnit> byHeading,
            double least,
            double median,
            double most) {}

    private Questions() {}

    /**
     * About units, by our column.
     *
     * @param lastTestKg the herd's mean at its last test day on record: a file of test days whose middle is that in pounds is asked about
     */
    public static Map<String, OfUnit> units(
            FileView view, List<String> headings, List<String> columns, String kind, OptionalDouble lastTestKg) {
        Map<String, OfUnit> asked = new HashMap<>();
        for (int place = 0; place < columns.size(); place++) {
            String column = columns.get(place);
            List<FileUnit> units = FileUnit.ofColumn(column);
            ColumnLook look = view.looks().get(place);
            OptionalDouble median = look.median();
            if (units.isEmpty() || median.isEmpty()) {
                continue;
            }
            Optional<FileUnit> byHeading = HeaderWords.unit(headings.get(place)).filter(units::contains);
            double most = look.most().getAsDouble();
            boolean isOdd = column.equals("milk_kg")
                    ? !kind.startsWith("tank")
                            && !kind.equals("milk-uses")
                            && (median.getAsDouble()
                                            > (kind.equals("milkings") ? ODD_MEDIAN_KG_MILKING : ODD_MEDIAN_KG_DAY)
                                    || most > ODD_MOST_KG
                                    || isTestInPounds(kind, median.getAsDouble(), lastTestKg))
                    : median.getAsDouble() > ODD_MEDIAN_CELLS || most > ODD_MOST_CELLS;
            asked.put(
                    column,
                    new OfUnit(
                            column,
                            place,
                            units,
                            isOdd || byHeading.isPresent(),
                            byHeading,
                            look.least().getAsDouble(),
                            median.getAsDouble(),
                            most));
        }
        return asked;
    }

    private static boolean isTestInPounds(String kind, double medianKg, OptionalDouble lastTestKg) {
        return kind.equals("test-days")
                && lastTestKg.orElse(0) > 0
                && HerdTestDay.pointsAtPounds(medianKg / lastTestKg.getAsDouble());
    }

    /** Columns of days that are not written year first. */
    public static List<ColumnLook> dates(FileView view, List<String> columns) {
        List<ColumnLook> asked = new ArrayList<>();
        for (int place = 0; place < columns.size(); place++) {
            String column = columns.get(place);
            if ((MappedTable.isDay(column) || MappedTable.isInstant(column))
                    && view.looks().get(place).hasOtherDates()) {
                asked.add(view.looks().get(place));
            }
        }
        return asked;
    }

    /** The way days are written, if some day tells: only one of its numbers can be a month. */
    public static Optional<FileDates> toldDates(List<ColumnLook> looks) {
        boolean dayFirst = looks.stream().anyMatch(ColumnLook::hasDayFirst);
        boolean monthFirst = looks.stream().anyMatch(ColumnLook::hasMonthFirst);
        if (dayFirst == monthFirst) {
            return Optional.empty();
        }
        return Optional.of(dayFirst ? FileDates.DAY_FIRST : FileDates.MONTH_FIRST);
    }

    /** Columns of numbers that are written with a comma somewhere. */
    public static List<ColumnLook> commas(FileView view, List<String> columns, List<Column> known) {
        List<ColumnLook> asked = new ArrayList<>();
        for (int place = 0; place < columns.size(); place++) {
            String name = columns.get(place);
            boolean isNumber = known.stream()
                    .anyMatch(column -> column.name().equals(name) && column.type() == Column.Type.NUMBER);
            if (isNumber && view.looks().get(place).hasCommas()) {
                asked.add(view.looks().get(place));
            }
        }
        return asked;
    }

    /** What our columns would be by the words of the headings; empty text where nothing fits. */
    public static List<String> proposed(List<String> headings, List<Column> columns) {
        return HeaderWords.proposed(headings, columns);
    }

    /** How many headings could be columns of a kind. */
    public static long fitting(List<String> headings, List<Column> columns) {
        return HeaderWords.fitting(headings, columns);
    }

    /** Rows as they would be stored, in our columns; the columns first. */
    public static List<List<String>> preview(
            FileView view, FileMapping mapping, List<Column> columns, java.time.ZoneId zone) {
        MappedTable mapped = new MappedTable(null, mapping, columns, zone, any -> {});
        List<List<String>> rows = new ArrayList<>();
        rows.add(mapped.columns().stream().map(Column::name).toList());
        view.examples(mapping.hasHeader()).stream()
                .filter(row -> row.size() == mapping.columns().size())
                .map(mapped::converted)
                .forEach(rows::add);
        return rows;
    }
}
