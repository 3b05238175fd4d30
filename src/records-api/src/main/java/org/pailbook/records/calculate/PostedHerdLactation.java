package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.pailbook.lactation.projection.HerdLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/**
 * A lactation as posted to be projected or learned from.
 *
 * @param id the caller's; null in a history that has none
 * @param animal as posted; null if it was not
 * @param cow tells cows apart: the animal, or a cow of her own
 * @param breed empty text if not posted
 * @param isParityPosted false if parity 1 stood in
 */
record PostedHerdLactation(
        String id, String animal, String cow, String breed, boolean isParityPosted, Lactation lactation) {
    static final int MOST_PARITY = 99;
    static final int LONGEST_TEXT = 100;

    /**
     * Reads one; empty if something is wrong, which is noted in {@code faults}.
     *
     * @param place pointer of the object in the body
     */
    static Optional<PostedHerdLactation> read(
            ObjectNode object, String place, boolean isIdRequired, List<FindingView> faults) {
        Fields fields = new Fields(object, place);
        String id = isIdRequired ? fields.requiredText("id", LONGEST_TEXT) : fields.text("id", LONGEST_TEXT);
        String animal = fields.text("animal", LONGEST_TEXT);
        Integer parity = fields.integer("parity", 1, MOST_PARITY);
        String breed = fields.text("breed", LONGEST_TEXT);
        LocalDate calvingDate = fields.requiredDate("calvingDate");
        LocalDate endDate = fields.date("endDate");
        if (calvingDate != null && endDate != null && endDate.isBefore(calvingDate)) {
            fields.findings()
                    .add(FindingView.error("before-calving", fields.pointer("endDate"), "lies before the calving")
                            .seen(endDate.toString())
                            .expecting(calvingDate + " or later"));
        }
        fields.require("testDays");
        List<PostedTestDay> tests = fields.objects("testDays", PostedLactation.MOST_TEST_DAYS).stream()
                .map(PostedTestDay::read)
                .toList();
        fields.finish();
        faults.addAll(fields.findings());
        if (!fields.findings().isEmpty()) {
            return Optional.empty();
        }
        Lactation lactation = new Lactation(
                parity == null ? 1 : parity,
                calvingDate,
                Optional.ofNullable(endDate),
                tests.stream().map(PostedTestDay::toLibrary).toList());
        return Optional.of(new PostedHerdLactation(
                id,
                animal,
                // no posted text may hold such a character
                animal == null ? "\0" + place : animal,
                breed == null ? "" : breed,
                parity != null,
                lactation));
    }

    HerdLactation toLibrary() {
        return new HerdLactation(cow, breed, lactation);
    }

    /** The last day anything was posted for. */
    LocalDate latestDay() {
        return Stream.concat(
                        Stream.concat(Stream.of(lactation.calvingDate()), lactation.endDate().stream()),
                        lactation.testDays().stream().map(TestDay::date))
                .max(LocalDate::compareTo)
                .orElseThrow();
    }

    int testsAfter(LocalDate day) {
        return (int) lactation.testDays().stream()
                .filter(test -> test.date().isAfter(day))
                .count();
    }
}
