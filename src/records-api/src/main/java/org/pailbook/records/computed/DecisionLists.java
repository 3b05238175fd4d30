package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.breeding.BreedingWorklist;
import org.pailbook.lactation.breeding.ListedCow;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.CullingRanking;
import org.pailbook.lactation.culling.MilkOnlyRanking;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.withheld.MilkedCow;
import org.pailbook.lactation.withheld.WithheldCow;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;

/** The lists a farm decides with, one line a cow, for tables and pages. */
@ApplicationScoped
public class DecisionLists {
    private final HerdValuation valuation;
    private final HerdBreeding breeding;
    private final HerdSettings settings;
    private final HerdMilkRecords milk;
    private final CowRecords records;

    @Inject
    DecisionLists(
            HerdValuation valuation,
            HerdBreeding breeding,
            HerdSettings settings,
            HerdMilkRecords milk,
            CowRecords records) {
        this.valuation = valuation;
        this.breeding = breeding;
        this.settings = settings;
        this.milk = milk;
        this.records = records;
    }

    /**
     * A cow in the ranking.
     *
     * @param outlook empty where the list is by milk alone
     * @param figure what she is ranked by
     * @param currency empty text where the list is by milk alone
     */
    public record RankedLine(
            int rank, RankedHerd.Candidate candidate, Optional<CowOutlook> outlook, Figure figure, String currency) {}

    /** A cow on a list of the breeding day. */
    public record BredLine(CowRecord record, ListedCow listed, BreedingSettings settings) {}

    /** A cow whose milk stays out. */
    public record WithheldLine(CowRecord record, WithheldCow cow) {}

    /** Lowest first; cows without a value are left out. */
    public List<RankedLine> ranking(HerdRow herd, LocalDate day) {
        HerdValuation.Valued valued = valuation.of(herd, day);
        Map<String, RankedHerd.Candidate> byId = valued.herd().byId();
        List<CullingCow> cows = valued.herd().cows();
        List<RankedLine> lines = new ArrayList<>();
        if (valued.money().isPresent()) {
            HerdValuation.ByMoney money = valued.money().get();
            CullingRanking.of(cows, money.keepOrReplace().get(), day)
                    .cows()
                    .forEach(ranked -> lines.add(new RankedLine(
                            ranked.rank(),
                            byId.get(ranked.outlook().cow()),
                            Optional.of(ranked.outlook()),
                            ranked.outlook().retentionPayoff(),
                            money.currency())));
        } else {
            MilkOnlyRanking.LOWEST_FIRST.of(cows, day).stream()
                    .filter(one -> one.levelPct().value().isPresent())
                    .forEach(one -> lines.add(new RankedLine(
                            lines.size() + 1, byId.get(one.cow()), Optional.empty(), one.levelPct(), "")));
        }
        return lines;
    }

    /** List by list. */
    public List<BredLine> worklist(HerdRow herd, LocalDate day) {
        return worklist(herd, records.ofHerd(herd, day), day);
    }

    /** The same of animals that have been read already. */
    public List<BredLine> worklist(HerdRow herd, List<CowRecord> animals, LocalDate day) {
        BreedingSettings own = settings.on(herd, day).breeding();
        List<HerdBreeding.BredCow> cows = breeding.of(herd, animals, day);
        Map<String, CowRecord> byId = cows.stream()
                .map(HerdBreeding.BredCow::record)
                .collect(Collectors.toMap(CowRecord::id, Function.identity()));
        return BreedingWorklist.with(own)
                .of(cows.stream().map(HerdBreeding.BredCow::breeding).toList())
                .stream()
                .map(listed -> new BredLine(byId.get(listed.cow().animal()), listed, own))
                .toList();
    }

    /** At the end of the day; cows that left are not listed. */
    public List<WithheldLine> withheld(HerdRow herd, LocalDate day) {
        return withheld(herd, records.ofHerd(herd, day), day);
    }

    /** The same of animals that have been read already. */
    public List<WithheldLine> withheld(HerdRow herd, List<CowRecord> read, LocalDate day) {
        WithheldMilk rules = settings.on(herd, day).withheld(OptionalInt.empty());
        List<CowRecord> animals = read.stream()
                .filter(record -> record.isBornBy(day) && record.onDay(day).state() != CowState.LEFT)
                .toList();
        List<MilkedCow> milked = milk.of(herd, animals, day);
        List<WithheldLine> lines = new ArrayList<>();
        for (int i = 0; i < animals.size(); i++) {
            CowRecord record = animals.get(i);
            rules.of(milked.get(i), WithheldMilk.endOf(day)).ifPresent(cow -> lines.add(new WithheldLine(record, cow)));
        }
        return lines;
    }
}
