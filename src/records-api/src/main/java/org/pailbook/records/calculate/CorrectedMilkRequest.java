package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormula;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormulas;
import org.pailbook.lactation.correctedmilk.SolidsCorrectedMilk;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.records.computed.MethodChoice;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FindingView;

/** Which milk to correct by which formula: one milk, or rows of them. */
final class CorrectedMilkRequest {
    /** 2,000 lactations of ten tests. Ours. */
    static final int MOST_ROWS = 20_000;

    private final CorrectedMilkFormula formula;
    private final List<PostedMilk> milks;
    private final boolean isTable;

    /** The members as they stand in the description of the API; the class reads them itself. */
    @Schema(
            name = "CorrectedMilkRequest",
            description = "One milk and its composition, or rows of them, and the formula; a formula is never assumed",
            allOf = PostedMilk.class,
            requiredProperties = "method",
            examples = "{\"method\":\"fpcm-2022\",\"milkKg\":35,\"fatPct\":3.8,\"proteinPct\":3.2,\"lactosePct\":4.8}")
    record Members(
            @Schema(description = "Formula by its name, from /v1/methods", examples = "fpcm-2022")
            String method,

            @Schema(description = "In place of milkKg and its composition: several", maxItems = MOST_ROWS)
            List<PostedMilk> rows) {}

    /** Milk of any length of time with its composition. Absent means not measured. */
    @Schema(name = "PostedMilk", description = "Milk of any length of time and its composition")
    record PostedMilk(
            @Schema(description = "kg", minimum = "0") Double milkKg,

            @Schema(description = "Fat, percent by mass", minimum = "0")
            Double fatPct,

            @Schema(description = "Protein, percent by mass", minimum = "0")
            Double proteinPct,

            @Schema(description = "Lactose, percent by mass", minimum = "0")
            Double lactosePct,

            @Schema(description = "Solids-not-fat, percent by mass; for scm-1965 only", minimum = "0")
            Double solidsNotFatPct) {

        static PostedMilk read(Fields fields) {
            fields.require("milkKg");
            return new PostedMilk(
                    fields.measure("milkKg"),
                    fields.measure("fatPct"),
                    fields.measure("proteinPct"),
                    fields.measure("lactosePct"),
                    fields.measure("solidsNotFatPct"));
        }

        Figure by(CorrectedMilkFormula formula, LocalDate asOf) {
            return formula instanceof SolidsCorrectedMilk ofSolids
                    ? ofSolids.ofSolids(milkKg, kgOf(fatPct), kgOf(solidsNotFatPct), asOf)
                    : formula.ofYield(milkKg, kgOf(fatPct), kgOf(proteinPct), kgOf(lactosePct), asOf);
        }

        private OptionalDouble kgOf(Double pct) {
            return pct == null ? OptionalDouble.empty() : OptionalDouble.of(milkKg * pct / 100);
        }
    }

    private CorrectedMilkRequest(CorrectedMilkFormula formula, List<PostedMilk> milks, boolean isTable) {
        this.formula = formula;
        this.milks = milks;
        this.isTable = isTable;
    }

    static CorrectedMilkRequest read(ObjectNode body) {
        Fields fields = new Fields(body, "");
        CorrectedMilkFormula formula = readFormula(fields);
        boolean isTable = fields.has("rows");
        List<PostedMilk> milks = isTable ? readRows(fields) : List.of(PostedMilk.read(fields));
        fields.finish();
        fields.refuseIfWrong();
        return new CorrectedMilkRequest(formula, milks, isTable);
    }

    private static CorrectedMilkFormula readFormula(Fields fields) {
        if (!fields.has("method")) {
            fields.findings()
                    .add(FindingView.error(
                            "required",
                            fields.pointer("method"),
                            "is required, since a formula is never assumed; one of "
                                    + String.join(", ", MethodChoice.ids(CorrectedMilkFormulas.all()))));
        }
        return MethodChoice.ofMember(fields, "method", CorrectedMilkFormulas.all())
                .orElse(null);
    }

    private static List<PostedMilk> readRows(Fields fields) {
        return fields.objects("rows", MOST_ROWS).stream()
                .map(row -> {
                    PostedMilk milk = PostedMilk.read(row);
                    row.finish();
                    return milk;
                })
                .toList();
    }

    CorrectedMilkView answer(boolean explain, Instant computedAt) {
        LocalDate day = LocalDate.ofInstant(computedAt, ZoneOffset.UTC); // a conversion holds on every day
        List<FigureView> figures = milks.stream()
                .map(milk -> FigureView.of(milk.by(formula, day), explain))
                .toList();
        return new CorrectedMilkView(
                MethodView.of(formula, "corrected-milk"),
                computedAt.toString(),
                isTable ? null : figures.get(0),
                isTable ? figures : null);
    }
}
