package org.pailbook.records.calculate;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.MilkByMonth;
import org.pailbook.lactation.culling.ParityGroup;
import org.pailbook.lactation.curve.WoodCurve;
import org.pailbook.records.computed.AssumedView;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** What cows of each parity do in the herd, as posted; what was left out is taken from the invented reference set and noted. */
final class PostedParities {
    private static final int PARITIES = 5;
    private static final double LEAST_WEIGHT_KG = 50;
    private static final double MOST_WEIGHT_KG = 2000;
    private static final double MOST_MILK_KG = 150;
    private static final double MOST_CURVE = 200;
    private static final double PERCENT = 100;

    private PostedParities() {}

    /** The members as they stand in the description of the API. */
    @Schema(
            name = "ParityParameters",
            description = "Cows of one parity in the herd; a member left out takes the value of the reference set",
            requiredProperties = "parity",
            examples = "{\"parity\":1,\"bodyWeightKg\":590,\"pregnancyRate21DayPct\":24}")
    record Members(
            @Schema(description = "5 stands for the fifth and later", minimum = "1", maximum = "5")
            Integer parity,

            Double bodyWeightKg,

            @Schema(
                    description = "Chance to die or have to leave in a month, from month 3 on, percent",
                    maximum = "100")
            Double unplannedExitPctPerMonth,

            @Schema(description = "Eligible cows that conceive within 21 days, percent", maximum = "100")
            Double pregnancyRate21DayPct,

            @Schema(description = "The herd's curve, Wood 1967: a, kg a day; all three or none")
            Double woodA,

            Double woodB,
            Double woodC) {}

    static HerdParameters read(Fields body, List<AssumedView> assumed) {
        List<Fields> posted = body.objects("parities", PARITIES);
        List<ParityGroup> groups = new ArrayList<>(HerdParameters.REFERENCE.groups());
        boolean[] isPosted = new boolean[PARITIES];
        for (Fields one : posted) {
            one.require("parity");
            Integer parity = one.integer("parity", 1, PARITIES);
            if (parity != null && isPosted[parity - 1]) {
                one.findings().add(FindingView.error("twice", one.pointer("parity"), "stands twice"));
            }
            ParityGroup group = read(one, parity == null ? groups.get(0) : groups.get(parity - 1), assumed);
            one.finish();
            if (parity != null && one.findings().isEmpty()) {
                groups.set(parity - 1, group);
                isPosted[parity - 1] = true;
            }
        }
        for (int parity = 1; parity <= PARITIES; parity++) {
            if (!isPosted[parity - 1]) {
                ParityGroup reference = groups.get(parity - 1);
                String at = "/parities of parity " + parity;
                assumed.addAll(AssumedView.ofGroup(at, reference));
                assumed.add(new AssumedView(
                        at + "/curve, kg in month 1", reference.milk().kgPerDay(1)));
            }
        }
        return HerdParameters.REFERENCE.withGroups(groups);
    }

    private static ParityGroup read(Fields one, ParityGroup reference, List<AssumedView> assumed) {
        return new ParityGroup(
                curve(one, reference, assumed),
                number(one, "bodyWeightKg", LEAST_WEIGHT_KG, MOST_WEIGHT_KG, reference.bodyWeightKg(), assumed),
                number(
                                one,
                                "unplannedExitPctPerMonth",
                                0,
                                PERCENT,
                                PERCENT * reference.unplannedExitSharePerMonth(),
                                assumed)
                        / PERCENT,
                number(one, "pregnancyRate21DayPct", 0, PERCENT, PERCENT * reference.pregnancyRate21DayShare(), assumed)
                        / PERCENT);
    }

    private static double number(
            Fields one, String name, double least, double most, double reference, List<AssumedView> assumed) {
        Double posted = one.measure(name, least, most);
        if (posted != null) {
            return posted;
        }
        if (!one.has(name)) {
            assumed.add(new AssumedView(one.pointer(name), reference));
        }
        return reference;
    }

    private static MilkByMonth curve(Fields one, ParityGroup reference, List<AssumedView> assumed) {
        Double a = one.measure("woodA", 0, MOST_CURVE);
        Double b = one.measure("woodB", 0, 2);
        Double c = one.measure("woodC", 0, 1);
        long given =
                List.of("woodA", "woodB", "woodC").stream().filter(one::has).count();
        if (given == 0) {
            assumed.add(new AssumedView(
                    one.pointer("curve, kg in month 1"), reference.milk().kgPerDay(1)));
        } else if (given < 3) {
            one.findings()
                    .add(FindingView.error(
                            "required", one.pointer("woodA"), "send woodA, woodB and woodC or none of them"));
        }
        if (a == null || b == null || c == null) {
            return reference.milk();
        }
        MilkByMonth milk = MilkByMonth.ofCurve(new WoodCurve(a, b, c)::milkKgPerDay);
        if (milk.kgPerDay().stream().anyMatch(kg -> kg > MOST_MILK_KG)) {
            one.findings()
                    .add(FindingView.error(
                            "out-of-range",
                            one.pointer("woodA"),
                            "the curve gives more than " + MOST_MILK_KG + " kg a day"));
        }
        return milk;
    }
}
