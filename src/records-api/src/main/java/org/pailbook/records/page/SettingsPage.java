package org.pailbook.records.page;

import java.util.List;
import java.util.Map;
import org.pailbook.lactation.udderhealth.TankLimit;
import org.pailbook.lactation.udderhealth.TankLimits;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.problem.Fault;

/**
 * How the farm decides and what it reckons with: what holds, and forms to set it anew.
 *
 * @param lines what holds, and who set it
 * @param since from which day the herd's own settings hold; empty text without any
 */
record SettingsPage(
        Shown shown,
        List<Line> lines,
        String since,
        List<FormField> settings,
        List<String> settingFaults,
        List<FormField> prices,
        List<String> priceFaults) {
    private static final List<String> UNITS = List.of("kg", "lb");

    /** One setting. */
    record Line(String name, String value, String givenBy) {}

    static SettingsPage of(Shown shown, SettingsInForce own, PageForm settings, PageForm prices) {
        // what is asked for is what is told
        own.breeding();
        own.withheld(java.util.OptionalInt.empty());
        own.highFrom(java.util.OptionalInt.empty());
        own.tankLimit(java.util.Optional.empty());
        own.closeCallCu();
        List<Line> lines = own.used().used().stream()
                .map(used -> new Line(
                        PageWords.word("setting." + used.setting()),
                        used.value() == null
                                ? used.choice()
                                : Shown.number(used.value(), used.value() % 1 == 0 ? 0 : 2),
                        PageWords.word("setting.by." + used.givenBy())))
                .toList();
        String since = own.used().validFrom();
        return new SettingsPage(
                shown,
                lines,
                since == null ? "" : since,
                settings.fields(),
                settings.otherFaults(),
                prices.fields(),
                prices.otherFaults());
    }

    static PageForm settings(Map<String, String> values, List<Fault> faults) {
        return new PageForm("setting", values, faults)
                .needed("date", "validFrom")
                .choice("milkUnit", false, UNITS)
                .field("number", "waitingDays")
                .field("number", "checkDays")
                .field("number", "dryDays")
                .field("number", "colostrumDays")
                .field("number", "highFrom")
                .choice(
                        "tankLimit",
                        false,
                        TankLimits.all().stream().map(TankLimit::id).toList())
                .field("number", "closeCall")
                .field("text", "note");
    }

    static PageForm prices(Map<String, String> values, List<Fault> faults) {
        return new PageForm("price", values, faults)
                .needed("date", "validFrom")
                .needed("text", "currency")
                .field("number", "milkPricePerKg")
                .field("number", "fatPricePerKg")
                .field("number", "proteinPricePerKg")
                .field("number", "heiferPrice")
                .field("number", "cullPrice")
                .field("number", "calfPrice")
                .field("number", "feedPricePerKgDryMatter")
                .field("number", "servicePrice")
                .field("number", "fixedCostPerCowMonth");
    }
}
