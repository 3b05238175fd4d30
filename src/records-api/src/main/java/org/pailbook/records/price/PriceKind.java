package org.pailbook.records.price;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.Currency;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.PriceRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How prices are read, checked and shown. */
@Singleton
public final class PriceKind extends HerdRecordKind<PriceRow> {

    @Override
    public String name() {
        return "prices";
    }

    @Override
    public Class<PriceRow> entity() {
        return PriceRow.class;
    }

    @Override
    protected String dayMember() {
        return "validFrom";
    }

    @Override
    protected String dayColumn() {
        return "valid_from";
    }

    @Override
    protected boolean mayLieAhead() {
        return true;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("currency", "currency"),
                Column.number("milk_price_per_kg", "milkPricePerKg"),
                Column.number("fat_price_per_kg", "fatPricePerKg"),
                Column.number("protein_price_per_kg", "proteinPricePerKg"),
                Column.number("heifer_price", "heiferPrice"),
                Column.number("cull_price", "cullPrice"),
                Column.number("calf_price", "calfPrice"),
                Column.number("feed_price_per_kg_dry_matter", "feedPricePerKgDryMatter"),
                Column.number("service_price", "servicePrice"),
                Column.number("fixed_cost_per_cow_month", "fixedCostPerCowMonth"),
                Column.text("note", "note"));
    }

    @Override
    protected PriceRow newRecord() {
        return new PriceRow();
    }

    @Override
    protected void readDetails(Fields fields, PriceRow record) {
        fields.require("currency");
        record.currency = fields.text("currency", 3);
        record.milkPricePerKg = fields.number("milkPricePerKg");
        record.fatPricePerKg = fields.number("fatPricePerKg");
        record.proteinPricePerKg = fields.number("proteinPricePerKg");
        record.heiferPrice = fields.number("heiferPrice");
        record.cullPrice = fields.number("cullPrice");
        record.calfPrice = fields.number("calfPrice");
        record.feedPricePerKgDryMatter = fields.number("feedPricePerKgDryMatter");
        record.servicePrice = fields.number("servicePrice");
        record.fixedCostPerCowMonth = fields.number("fixedCostPerCowMonth");
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(PriceRow record, ObjectNode content) {
        put(content, "currency", record.currency);
        put(content, "milkPricePerKg", record.milkPricePerKg);
        put(content, "fatPricePerKg", record.fatPricePerKg);
        put(content, "proteinPricePerKg", record.proteinPricePerKg);
        put(content, "heiferPrice", record.heiferPrice);
        put(content, "cullPrice", record.cullPrice);
        put(content, "calfPrice", record.calfPrice);
        put(content, "feedPricePerKgDryMatter", record.feedPricePerKgDryMatter);
        put(content, "servicePrice", record.servicePrice);
        put(content, "fixedCostPerCowMonth", record.fixedCostPerCowMonth);
        put(content, "note", record.note);
    }

    @Override
    protected void checkDetails(Posted<PriceRow> posted, PriceRow replaced) {
        PriceRow record = posted.record();
        if (record.currency != null
                && Currency.getAvailableCurrencies().stream()
                        .noneMatch(known -> known.getCurrencyCode().equals(record.currency))) {
            posted.add(FindingView.error("unknown-currency", posted.pointer("currency"), "is no code of ISO 4217")
                    .seen(record.currency));
        }
        ObjectNode prices = JsonNodeFactory.instance.objectNode();
        writeDetails(record, prices);
        prices.properties().stream()
                .filter(price -> price.getValue().isNumber())
                .forEach(price -> ValueChecks.check(
                        posted,
                        price.getKey().equals("calfPrice") ? "price.calf" : "price",
                        price.getKey(),
                        price.getValue().doubleValue()));
        if (prices.properties().stream().noneMatch(price -> price.getValue().isNumber())) {
            posted.add(FindingView.error("no-price", posted.pointer(), "holds no price"));
        }
        boolean twoWays =
                record.milkPricePerKg != null && (record.fatPricePerKg != null || record.proteinPricePerKg != null);
        if (twoWays) {
            posted.add(FindingView.info(
                    "milk-and-components-priced",
                    posted.pointer("milkPricePerKg"),
                    "is added to the prices of fat and protein"));
        }
    }
}
