package org.pailbook.records.calculate;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.records.computed.Subject;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/**
 * One lactation as posted to be computed with.
 *
 * @param asOf later tests and a later end take no part; null for the latest day posted
 * @param parity null if not known
 * @param breed null if not known
 */
@Schema(name = "PostedLactation", description = "One lactation: its calving and its test days, in any order")
record PostedLactation(
        @Schema(description = "Later tests and a later end take no part; the latest day posted if left out")
        LocalDate asOf,

        @Schema(description = "Day 0") LocalDate calvingDate,

        @Schema(description = "Last day she was milked in it; left out while she is in milk")
        LocalDate endDate,

        @Schema(
                description = "Number of calvings including this one; 1 if left out, with a warning",
                minimum = "1",
                maximum = "99")
        Integer parity,

        @Schema(description = "ICAR breed code, or text; picks the standard curve of her group", examples = "HOL")
        String breed,

        @Schema(maxItems = MOST_TEST_DAYS) List<PostedTestDay> testDays) {

    /** A weight every day for more than a year; beyond that some methods take seconds. Ours. */
    static final int MOST_TEST_DAYS = 500;

    private static final int MOST_PARITY = 99;
    private static final int LONGEST_BREED = 100;

    /** Reads the members; what is wrong is noted in {@code fields}, and {@link #subject} may be called only if nothing is. */
    static PostedLactation read(Fields fields) {
        LocalDate asOf = fields.date("asOf");
        LocalDate calvingDate = fields.requiredDate("calvingDate");
        LocalDate endDate = fields.date("endDate");
        if (calvingDate != null && endDate != null && endDate.isBefore(calvingDate)) {
            fields.findings()
                    .add(FindingView.error("before-calving", fields.pointer("endDate"), "lies before the calving")
                            .seen(endDate.toString())
                            .expecting(calvingDate + " or later"));
        }
        Integer parity = fields.integer("parity", 1, MOST_PARITY);
        String breed = fields.text("breed", LONGEST_BREED);
        fields.require("testDays");
        List<PostedTestDay> tests = fields.objects("testDays", MOST_TEST_DAYS).stream()
                .map(PostedTestDay::read)
                .toList();
        return new PostedLactation(asOf, calvingDate, endDate, parity, breed, tests);
    }

    /** The lactation in the library's types. */
    Subject subject(Instant computedAt) {
        int known = parity == null ? 1 : parity;
        Lactation lactation = new Lactation(
                known,
                calvingDate,
                Optional.ofNullable(endDate),
                testDays.stream().map(PostedTestDay::toLibrary).toList());
        return new Subject(
                Optional.empty(),
                Optional.empty(),
                breed == null ? "" : breed,
                Optional.of(known),
                Optional.of(lactation),
                new AsOf(asOf == null ? latestDay() : asOf, computedAt),
                parity == null
                        ? List.of(Finding.of(FindingCode.PARITY_COUNTED)
                                .withField("parity")
                                .withSeen("none; computed as parity 1"))
                        : List.of());
    }

    private LocalDate latestDay() {
        return Stream.concat(
                        Stream.of(calvingDate, endDate).filter(Objects::nonNull),
                        testDays.stream().map(PostedTestDay::date))
                .max(LocalDate::compareTo)
                .orElseThrow();
    }
}
