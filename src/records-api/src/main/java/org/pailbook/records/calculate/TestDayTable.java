package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.records.exchange.CsvRows;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.StrictJson;

/**
 * A table of test days, one a row, of which every lactation is projected and the others' lactations are its history. A row without test date stands
 * for a lactation without a test.
 */
final class TestDayTable {
    static final List<Column> COLUMNS = List.of(
            text("animal"),
            number("parity"),
            text("breed"),
            text("calving_date"),
            text("test_date"),
            number("dim"),
            number("milk_kg"),
            number("fat_pct"),
            number("protein_pct"),
            number("scc_thousand"));

    private static final int MOST_DAYS_IN_MILK = 5000;

    private final Map<Key, List<TestDay>> tests = new LinkedHashMap<>();
    private final Map<Key, String> breeds = new LinkedHashMap<>();
    private final List<FindingView> faults = new ArrayList<>();

    private record Key(String animal, int parity, LocalDate calvingDate) {}

    private TestDayTable() {}

    private static Column text(String name) {
        return Column.text(name, name);
    }

    private static Column number(String name) {
        return Column.number(name, name);
    }

    static ProjectionsRequest read(InputStream body, Optional<LocalDate> asOf) {
        TestDayTable table = new TestDayTable();
        try {
            CsvRows rows = new CsvRows(body, COLUMNS);
            for (PostedRow row = rows.next(); row != null; row = rows.next()) {
                table.add(row);
            }
        } catch (IOException unreadable) {
            throw StrictJson.unreadable(unreadable);
        }
        ProjectionsRequest.refuseIfWrong(table.faults);
        List<PostedHerdLactation> lactations = new ArrayList<>();
        table.tests.forEach((key, days) -> lactations.add(new PostedHerdLactation(
                null,
                key.animal(),
                key.animal(),
                table.breeds.get(key),
                true,
                Lactation.inMilk(key.parity(), key.calvingDate(), days))));
        return new ProjectionsRequest(asOf, lactations, lactations);
    }

    private void add(PostedRow row) {
        List<FindingView> wrong = row.content() == null ? row.unreadable() : take(row.content(), row.pointer());
        faults.addAll(wrong.stream()
                .map(one -> new FindingView(
                        one.grade(),
                        one.code(),
                        one.pointer(),
                        one.column(),
                        one.value(),
                        "line " + row.line() + ": " + one.message(),
                        one.expected()))
                .toList());
        if (faults.size() >= 100) {
            ProjectionsRequest.refuseIfWrong(faults);
        }
    }

    private List<FindingView> take(ObjectNode content, String place) {
        Fields fields = new Fields(content, place);
        String animal = fields.requiredText("animal", PostedHerdLactation.LONGEST_TEXT);
        fields.require("parity");
        Integer parity = fields.integer("parity", 1, PostedHerdLactation.MOST_PARITY);
        String breed = fields.text("breed", PostedHerdLactation.LONGEST_TEXT);
        LocalDate calvingDate = fields.requiredDate("calving_date");
        LocalDate testDate = fields.date("test_date");
        Integer dim = fields.integer("dim", -MOST_DAYS_IN_MILK, MOST_DAYS_IN_MILK);
        Double milkKg = fields.measure("milk_kg");
        Double fatPct = fields.measure("fat_pct");
        Double proteinPct = fields.measure("protein_pct");
        Double scc = fields.measure("scc_thousand");
        if (testDate == null && (milkKg != null || fatPct != null || proteinPct != null || scc != null)) {
            fields.require("test_date");
        }
        if (testDate != null
                && calvingDate != null
                && dim != null
                && !calvingDate.plusDays(dim).equals(testDate)) {
            fields.findings()
                    .add(FindingView.error(
                                    "dim-contradicts-dates",
                                    fields.pointer("dim"),
                                    "is not the number of days from calving_date to test_date")
                            .seen(dim.toString())
                            .expecting(Long.toString(testDate.toEpochDay() - calvingDate.toEpochDay())));
        }
        if (fields.findings().isEmpty()) {
            Key key = new Key(animal, parity, calvingDate);
            breeds.putIfAbsent(key, breed == null ? "" : breed);
            List<TestDay> days = tests.computeIfAbsent(key, unused -> new ArrayList<>());
            if (tests.size() > ProjectionsRequest.MOST_LACTATIONS || days.size() == PostedLactation.MOST_TEST_DAYS) {
                throw new Problem(
                        ProblemCode.TOO_LARGE,
                        "At most " + ProjectionsRequest.MOST_LACTATIONS + " lactations with at most "
                                + PostedLactation.MOST_TEST_DAYS + " test days each.");
            }
            if (testDate != null) {
                days.add(new TestDay(
                        testDate,
                        optional(milkKg),
                        optional(fatPct),
                        optional(proteinPct),
                        OptionalDouble.empty(),
                        optional(scc)));
            }
        }
        return fields.findings();
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
