package org.pailbook.records.calculate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.HealthBurden;
import org.pailbook.lactation.culling.MilkLevel;
import org.pailbook.lactation.culling.PregnancyState;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** One cow as posted: where she stands in her lactation, whether she is pregnant, how she milks. */
final class PostedCow {
    private static final String OPEN = "open";
    private static final String NOT_KNOWN = "not-known";
    private static final int MOST_DAYS = 3000;
    private static final int DAYS_PER_MONTH = 30;
    private static final int LONGEST_TEXT = 100;
    private static final double MOST_LEVEL = 3;
    private static final double MOST_KG = 30_000;
    private static final double MOST_CU = 1e6;
    private static final double MOST_FACTOR = 100;

    private PostedCow() {}

    /** The members as they stand in the description of the API. */
    @Schema(
            name = "CowToValue",
            description =
                    "Her lactation by calvingDate or daysInMilk; her pregnancy by one of pregnantSinceDate,"
                            + " monthsPregnant, inseminatedOn or pregnancy; her milk by projected305Kg and groupMean305Kg, or by milkLevel",
            requiredProperties = "parity",
            examples = "{\"id\":\"112\",\"parity\":2,\"daysInMilk\":228,\"monthsPregnant\":4,\"projected305Kg\":8100,"
                    + "\"groupMean305Kg\":7900,\"projected305StandardErrorKg\":400,\"testDays\":7}")
    record Members(
            @Schema(description = "Yours, given back") String id,

            @Schema(minimum = "1", maximum = "99") Integer parity,
            LocalDate calvingDate,

            @Schema(minimum = "0", maximum = "3000", description = "In place of calvingDate; dry days count on")
            Integer daysInMilk,

            @Schema(description = "Day of the conception that was found by a check")
            LocalDate pregnantSinceDate,

            @Schema(minimum = "1", maximum = "9") Integer monthsPregnant,

            @Schema(description = "Last insemination, not checked, no return seen")
            LocalDate inseminatedOn,

            @Schema(
                    description = "Found open, or not known",
                    enumeration = {OPEN, NOT_KNOWN},
                    defaultValue = NOT_KNOWN)
            String pregnancy,

            @Schema(description = "false if she is not to be bred again", defaultValue = "true")
            Boolean isToBeBred,

            @Schema(description = "Her projected 305-day milk, kg", minimum = "0")
            Double projected305Kg,

            @Schema(description = "Mean projection of the herd's first or later lactations, as hers is, kg")
            Double groupMean305Kg,

            @Schema(description = "Of her projection, kg", minimum = "0")
            Double projected305StandardErrorKg,

            @Schema(description = "In place of the projection: her milk over the mean of her group", maximum = "3")
            Double milkLevel,

            @Schema(description = "Test days her level rests on", minimum = "0")
            Integer testDays,

            @Schema(description = "What a chronic condition costs, by somebody who knows her; never estimated here")
            HealthMembers health) {}

    /** A burden of health as posted. */
    @Schema(name = "HealthBurden")
    record HealthMembers(
            @Schema(minimum = "0") Double extraCostCuPerMonth,

            @Schema(description = "Her chance of an unplanned exit over that of a healthy cow", minimum = "1")
            Double unplannedExitFactor) {}

    /** Reads the cow; what is wrong is noted in {@code fields}. Null if something is. */
    static CullingCow read(Fields fields, LocalDate asOf) {
        String id = fields.text("id", LONGEST_TEXT);
        fields.require("parity");
        Integer parity = fields.integer("parity", 1, PostedHerdLactation.MOST_PARITY);
        LocalDate calved = calvingDate(fields, asOf);
        PregnancyState pregnancy = pregnancy(fields, calved, asOf);
        Boolean isToBeBred = fields.flag("isToBeBred");
        MilkLevel milk = milk(fields);
        Optional<HealthBurden> health = health(fields.object("health"));
        fields.finish();
        if (!fields.findings().isEmpty()) {
            return null;
        }
        return new CullingCow(
                id == null ? "" : id,
                parity,
                Optional.ofNullable(calved),
                pregnancy,
                milk,
                isToBeBred == null || isToBeBred,
                health);
    }

    private static LocalDate calvingDate(Fields fields, LocalDate asOf) {
        boolean isDated = onlyOne(fields, "calvingDate", "daysInMilk").isPresent() && fields.has("calvingDate");
        LocalDate calved = fields.date("calvingDate");
        Integer days = fields.integer("daysInMilk", 0, MOST_DAYS);
        if (calved != null && calved.isAfter(asOf)) {
            error(fields, "after-as-of", "calvingDate", "lies after the as-of day, " + asOf);
        }
        return isDated || days == null ? calved : asOf.minusDays(days);
    }

    private static PregnancyState pregnancy(Fields fields, LocalDate calved, LocalDate asOf) {
        Optional<String> given = onlyOne(fields, "pregnantSinceDate", "monthsPregnant", "inseminatedOn", "pregnancy");
        LocalDate conceived = between(fields, "pregnantSinceDate", calved, asOf);
        Integer months = fields.integer("monthsPregnant", 1, 9);
        if (months != null
                && calved != null
                && asOf.minusDays(DAYS_PER_MONTH * (months - 1L)).isBefore(calved)) {
            error(fields, "dates-out-of-order", "monthsPregnant", "is longer than since her calving, " + calved);
        }
        LocalDate inseminated = between(fields, "inseminatedOn", calved, asOf);
        String state = fields.code("pregnancy", List.of(OPEN, NOT_KNOWN));
        if (given.isEmpty() || !fields.findings().isEmpty()) {
            return PregnancyState.NOT_KNOWN;
        }
        return switch (given.get()) {
            case "pregnantSinceDate" -> PregnancyState.pregnantSince(conceived);
            case "monthsPregnant" -> PregnancyState.pregnantForMonths(months);
            case "inseminatedOn" -> PregnancyState.inseminatedOn(inseminated);
            default -> OPEN.equals(state) ? PregnancyState.OPEN : PregnancyState.NOT_KNOWN;
        };
    }

    private static LocalDate between(Fields fields, String name, LocalDate calved, LocalDate asOf) {
        LocalDate day = fields.date(name);
        if (day != null && (day.isAfter(asOf) || (calved != null && day.isBefore(calved)))) {
            error(fields, "dates-out-of-order", name, "must lie between her calving and the as-of day, " + asOf);
        }
        return day;
    }

    private static MilkLevel milk(Fields fields) {
        boolean isProjected =
                onlyOne(fields, "milkLevel", "projected305Kg").orElse("").equals("projected305Kg");
        Double level = fields.measure("milkLevel", 0, MOST_LEVEL);
        Double projected = fields.measure("projected305Kg", 0, MOST_KG);
        Double mean = fields.measure("groupMean305Kg", 1, MOST_KG);
        Double error = fields.measure("projected305StandardErrorKg", 0, MOST_KG);
        Integer posted = fields.integer("testDays", 0, PostedLactation.MOST_TEST_DAYS);
        int tests = posted == null ? 0 : posted;
        if (fields.has("projected305Kg") && !fields.has("groupMean305Kg")) {
            error(fields, "required", "groupMean305Kg", "is required beside projected305Kg");
        }
        if (projected != null && mean != null && projected / mean > MOST_LEVEL) {
            error(fields, "out-of-range", "projected305Kg", "must be at most three times groupMean305Kg");
        }
        if (!fields.findings().isEmpty()) {
            return MilkLevel.NOT_KNOWN;
        }
        if (isProjected) {
            return MilkLevel.ofProjection(
                    projected, mean, error == null ? OptionalDouble.empty() : OptionalDouble.of(error), tests);
        }
        return level == null ? MilkLevel.NOT_KNOWN : new MilkLevel(level, OptionalDouble.empty(), tests);
    }

    private static Optional<HealthBurden> health(Fields health) {
        if (health == null) {
            return Optional.empty();
        }
        Double cost = health.measure("extraCostCuPerMonth", 0, MOST_CU);
        Double factor = health.measure("unplannedExitFactor", 1, MOST_FACTOR);
        health.finish();
        return Optional.of(new HealthBurden(cost == null ? 0 : cost, factor == null ? 1 : factor));
    }

    /** The one of them that was sent; more than one is noted. */
    private static Optional<String> onlyOne(Fields fields, String... names) {
        List<String> sent = Stream.of(names).filter(fields::has).toList();
        if (sent.size() > 1) {
            error(fields, "not-together", sent.get(1), "send one of " + String.join(", ", names));
        }
        return sent.stream().findFirst();
    }

    private static void error(Fields fields, String code, String name, String message) {
        fields.findings().add(FindingView.error(code, fields.pointer(name), message));
    }
}
