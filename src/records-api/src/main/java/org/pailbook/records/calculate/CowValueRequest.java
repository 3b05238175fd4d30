package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.culling.CowValueTable;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.CullingPrices;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.records.computed.AssumedView;
import org.pailbook.records.computed.PostedPrices;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** Which cow to value, under which prices, in what herd. */
final class CowValueRequest {
    private static final double MOST_CU = 1e9;

    private final CullingCow cow;
    private final LocalDate asOf;
    private final CullingPrices prices;
    private final HerdParameters herd;
    private final double closeCu;
    private final List<AssumedView> assumed;

    /** The members as they stand in the description of the API; the class reads them itself. */
    @Schema(
            name = "CowValueRequest",
            description = "A cow, and the prices and herd she is kept under",
            requiredProperties = "cow",
            examples =
                    "{\"asOf\":\"2026-01-10\",\"cow\":{\"id\":\"112\",\"parity\":2,\"daysInMilk\":228,\"monthsPregnant\":4,"
                            + "\"projected305Kg\":8100,\"groupMean305Kg\":7900,\"projected305StandardErrorKg\":400,\"testDays\":7},"
                            + "\"prices\":{\"milkCuPerKg\":0.48,\"heiferCu\":1900,\"saleCuPerKgLive\":1.45}}")
    record Members(
            @Schema(description = "The day it holds for; today in UTC if left out")
            LocalDate asOf,

            PostedCow.Members cow,
            PostedPrices.Members prices,

            @Schema(
                    description = "What the herd's cows do, by parity; the reference set for those left out",
                    maxItems = 5)
            List<PostedParities.Members> parities,

            @Schema(
                    description =
                            "A pay-off nearer to 0 than this is a close call; 100 if left out, a default of ours that suits"
                                    + " euros and dollars",
                    defaultValue = "100")
            Double closeCallCu) {}

    private CowValueRequest(
            CullingCow cow,
            LocalDate asOf,
            CullingPrices prices,
            HerdParameters herd,
            double closeCu,
            List<AssumedView> assumed) {
        this.cow = cow;
        this.asOf = asOf;
        this.prices = prices;
        this.herd = herd;
        this.closeCu = closeCu;
        this.assumed = assumed;
    }

    static CowValueRequest read(ObjectNode body, Instant now) {
        Fields fields = new Fields(body, "");
        List<AssumedView> assumed = new ArrayList<>();
        LocalDate posted = fields.date("asOf");
        LocalDate asOf = posted == null ? LocalDate.ofInstant(now, ZoneOffset.UTC) : posted;
        fields.require("cow");
        Fields cowFields = fields.object("cow");
        CullingCow cow = cowFields == null ? null : PostedCow.read(cowFields, asOf);
        CullingPrices prices = PostedPrices.read(fields.object("prices"), "/prices", assumed);
        HerdParameters herd = PostedParities.read(fields, assumed);
        Double close = fields.measure("closeCallCu", 0, MOST_CU);
        if (close == null && !fields.has("closeCallCu")) {
            assumed.add(new AssumedView("/closeCallCu", KeepOrReplace.CLOSE_CU));
        }
        fields.finish();
        if (fields.findings().isEmpty() && !CowValueTable.hasValue(prices, herd)) {
            double sale = prices.saleCuPerKgLive() * herd.group(1).bodyWeightKg();
            fields.findings()
                    .add(FindingView.error(
                                    "contradictory-prices",
                                    "/prices/heiferCu",
                                    "must be above what a first-lactation cow is sold for, or buying and selling heifers would gain"
                                            + " without end")
                            .seen(Double.toString(prices.heiferCu()))
                            .expecting("more than " + sale));
        }
        fields.refuseIfWrong();
        return new CowValueRequest(cow, asOf, prices, herd, close == null ? KeepOrReplace.CLOSE_CU : close, assumed);
    }

    CowValueView answer(boolean explain, Instant computedAt) {
        KeepOrReplace keepOrReplace =
                KeepOrReplace.with(prices, herd, AssumedView.findings(assumed)).closeWithinCu(closeCu);
        return CowValueView.of(cow, asOf, keepOrReplace, assumed, explain, computedAt);
    }
}
