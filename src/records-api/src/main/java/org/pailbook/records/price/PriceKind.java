package org.pailbook.records.price;

import jakarta.inject.Singleton;
import java.util.Currency;
import java.util.List;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.store.PriceRow;
import org.pailbook.records.wire.FindingView;

/** How prices are read, checked and shown. */
@Singleton
public final class PriceKind extends HerdRecordKind<PriceRow> {
    private static final List<Member<PriceRow>> MEMBERS = Members.of(PriceRow.class)
            .text("currency", 3, record -> record.currency, (record, value) -> record.currency = value)
            .needed()
            .number("milkPricePerKg", record -> record.milkPricePerKg, (record, value) -> record.milkPricePerKg = value)
            .within("price")
            .number("fatPricePerKg", record -> record.fatPricePerKg, (record, value) -> record.fatPricePerKg = value)
            .within("price")
            .number(
                    "proteinPricePerKg",
                    record -> record.proteinPricePerKg,
                    (record, value) -> record.proteinPricePerKg = value)
            .within("price")
            .number("heiferPrice", record -> record.heiferPrice, (record, value) -> record.heiferPrice = value)
            .within("price")
            .number("cullPrice", record -> record.cullPrice, (record, value) -> record.cullPrice = value)
            .within("price")
            .number("calfPrice", record -> record.calfPrice, (record, value) -> record.calfPrice = value)
            .within("price.calf")
            .number(
                    "feedPricePerKgDryMatter",
                    record -> record.feedPricePerKgDryMatter,
                    (record, value) -> record.feedPricePerKgDryMatter = value)
            .within("price")
            .number("servicePrice", record -> record.servicePrice, (record, value) -> record.servicePrice = value)
            .within("price")
            .number(
                    "fixedCostPerCowMonth",
                    record -> record.fixedCostPerCowMonth,
                    (record, value) -> record.fixedCostPerCowMonth = value)
            .within("price")
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

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
    public String dayColumn() {
        return "valid_from";
    }

    @Override
    protected boolean mayLieAhead() {
        return true;
    }

    @Override
    protected List<Member<PriceRow>> members() {
        return MEMBERS;
    }

    @Override
    protected PriceRow newRecord() {
        return new PriceRow();
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
        checkLimits(posted);
        boolean noPrice = MEMBERS.stream()
                .filter(member -> member.limit() != null)
                .allMatch(price -> price.value().apply(record) == null);
        if (noPrice) {
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
