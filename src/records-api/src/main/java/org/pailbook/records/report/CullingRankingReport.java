package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCaution;
import org.pailbook.lactation.culling.Reason;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.records.computed.DecisionLists;
import org.pailbook.records.computed.DecisionLists.RankedLine;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** The herd in the order of what keeping each cow is worth. */
@ApplicationScoped
class CullingRankingReport implements Report<RankedLine> {
    private final DecisionLists lists;

    @Inject
    CullingRankingReport(DecisionLists lists) {
        this.lists = lists;
    }

    @Override
    public String name() {
        return "culling-ranking";
    }

    @Override
    public String meaning() {
        return "One cow in milk or dry, lowest first by what keeping her is worth over replacing her; by milk alone without"
                + " a milk, heifer and cull price. " + CullingCaution.TEXT;
    }

    @Override
    public List<Column<RankedLine>> columns() {
        return List.of(
                CowColumns.scheme(line -> line.candidate().record().shownIdentifier()),
                CowColumns.id(line -> line.candidate().record().shownIdentifier()),
                Column.text(
                        "name",
                        "Name as entered",
                        line -> line.candidate().record().name().orElse(null)),
                Column.count("rank", "", "1 is the lowest", RankedLine::rank),
                Column.count(
                        "parity",
                        "",
                        "Number of her calvings",
                        line -> line.candidate().parity()),
                Column.count(
                        "days_since_calving",
                        "d",
                        "Dry days count on",
                        line -> line.candidate().breeding().daysSinceCalving().orElseThrow()),
                Column.computed(
                        "milk_level_pct",
                        "%",
                        1,
                        "Only where the list is by milk: projected 305-day milk over the mean of her group",
                        line -> line.outlook().isPresent()
                                ? OptionalDouble.empty()
                                : line.figure().value()),
                Column.text("currency", "ISO 4217, of every sum of money", RankedLine::currency),
                Column.computed(
                        "retention_payoff",
                        "money",
                        0,
                        "Keeping her over replacing her now",
                        line -> line.outlook().isPresent() ? line.figure().value() : OptionalDouble.empty()),
                Column.computed(
                        "low",
                        "money",
                        0,
                        "Lowest if milk or heifer price is 20 % off or her level by its standard error",
                        line -> range(line, true)),
                Column.computed("high", "money", 0, "Highest", line -> range(line, false)),
                Column.text(
                        "suggestion",
                        "worth-keeping, close-call, consider-replacing; never an order",
                        line -> line.outlook()
                                .flatMap(CowOutlook::suggestion)
                                .map(suggestion -> suggestion.code())
                                .orElse(null)),
                Column.text("first_reason", "The larger of two, in words", line -> reason(line, 0)),
                Column.text("second_reason", "The other", line -> reason(line, 1)),
                Column.text("caution", "Goes wherever the row goes", line -> CullingCaution.TEXT));
    }

    private static OptionalDouble range(RankedLine line, boolean low) {
        return line.outlook()
                .flatMap(CowOutlook::range)
                .map(range -> OptionalDouble.of(low ? range.lowCu() : range.highCu()))
                .orElse(OptionalDouble.empty());
    }

    private static String reason(RankedLine line, int place) {
        List<Reason> reasons = line.outlook().map(CowOutlook::reasons).orElse(List.of());
        return reasons.size() > place ? reasons.get(place).words() : null;
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<RankedLine> each) {
        lists.ranking(herd, asOf.day()).forEach(each);
    }

    @Override
    public PublishedMethod method(RankedLine line) {
        return line.figure().method();
    }

    @Override
    public List<Finding> findings(RankedLine line) {
        return line.figure().findings();
    }
}
