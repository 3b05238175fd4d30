package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
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

/** The lists a farm decides with, one line a cow: the one walk for answers, tables and pages. */
@ApplicationScoped
public class DecisionLists {
    private final HerdValuation valuation;
    private final HerdSettings settings;
    private final HerdMilkRecords milk;
    private final CowRecords records;

    @Inject
    DecisionLists(HerdValuation valuation, HerdSettings settings, HerdMilkRecords milk, CowRecords records) {
        this.valuation = valuation;
        this.settings = settings;
        this.milk = milk;
        this.records = records;
    }

    /**
     * A cow in the ranking.
     *
     * @param ranked empty where the list is by milk alone
     * @param figure what she is ranked by
     * @param currency empty text where the list is by milk alone
     */
    public record RankedLine(
            int rank,
            RankedHerd.Candidate candidate,
            CullingCow cow,
            Optional<CullingRanking.Ranked> ranked,
            Figure figure,
            String currency) {
        /** Empty where the list is by milk alone. */
        public Optional<CowOutlook> outlook() {
            return ranked.map(CullingRanking.Ranked::outlook);
        }
    }

    /** A cow that has no place, and the figure without a value that says why. */
    public record NotRanked(RankedHerd.Candidate candidate, Figure figure) {}

    /**
     * A herd in order.
     *
     * @param lines lowest first
     */
    public record RankedLines(Yardstick by, List<RankedLine> lines, List<NotRanked> notRanked) {}

    /** A cow whose milk stays out. */
    public record WithheldLine(CowRecord record, CowState state, WithheldCow cow) {}

    /**
     * Whose milk stays out at a moment.
     *
     * @param foremilkNotRecorded cows in milk without a foremilk check on that day up to the moment
     * @param isAnyThere whether the herd has an animal
     */
    public record WithheldLines(
            WithheldMilk rules,
            UsedSettingsView used,
            List<WithheldLine> lines,
            List<CowRecord> foremilkNotRecorded,
            boolean isAnyThere) {}

    /** Lowest first; cows without a value are left out. */
    public List<RankedLine> ranking(HerdRow herd, LocalDate day) {
        return ranked(herd, day).lines();
    }

    /** The same with what it was made from, and the cows without a value. */
    public RankedLines ranked(HerdRow herd, LocalDate day) {
        HerdValuation.Valued valued = valuation.of(herd, day);
        Map<String, RankedHerd.Candidate> byId = valued.herd().byId();
        List<CullingCow> cows = valued.cows();
        List<RankedLine> lines = new ArrayList<>();
        List<NotRanked> notRanked = new ArrayList<>();
        if (valued.by().money().isPresent()) {
            Yardstick.ByMoney money = valued.by().money().get();
            Map<String, CullingCow> cowOf =
                    cows.stream().collect(Collectors.toMap(CullingCow::cow, Function.identity()));
            CullingRanking ranking =
                    CullingRanking.of(cows, money.keepOrReplace().get(), day);
            ranking.cows().forEach(one -> {
                CowOutlook outlook = one.outlook();
                lines.add(new RankedLine(
                        one.rank(),
                        byId.get(outlook.cow()),
                        cowOf.get(outlook.cow()),
                        Optional.of(one),
                        outlook.retentionPayoff(),
                        money.currency()));
            });
            ranking.notRanked()
                    .forEach(one -> notRanked.add(new NotRanked(byId.get(one.cow()), one.retentionPayoff())));
        } else {
            rankByMilk(cows, byId, day, lines, notRanked);
        }
        return new RankedLines(valued.by(), lines, notRanked);
    }

    private static void rankByMilk(
            List<CullingCow> cows,
            Map<String, RankedHerd.Candidate> byId,
            LocalDate day,
            List<RankedLine> lines,
            List<NotRanked> notRanked) {
        Map<String, CullingCow> cowOf = cows.stream().collect(Collectors.toMap(CullingCow::cow, Function.identity()));
        for (MilkOnlyRanking.Listed one : MilkOnlyRanking.LOWEST_FIRST.of(cows, day)) {
            RankedHerd.Candidate candidate = byId.get(one.cow());
            if (one.levelPct().value().isPresent()) {
                lines.add(new RankedLine(
                        lines.size() + 1, candidate, cowOf.get(one.cow()), Optional.empty(), one.levelPct(), ""));
            } else {
                notRanked.add(new NotRanked(candidate, one.levelPct()));
            }
        }
    }

    /** At the end of the day, by the herd's own settings. */
    public List<WithheldLine> withheld(HerdRow herd, LocalDate day) {
        return withheld(herd, records.ofHerd(herd, day), day);
    }

    /** The same of animals that have been read already. */
    public List<WithheldLine> withheld(HerdRow herd, List<CowRecord> read, LocalDate day) {
        return withheld(herd, read, WithheldMilk.endOf(day), OptionalInt.empty())
                .lines();
    }

    /** Cows that left are not listed. @param colostrumDays asked over the herd's settings */
    public WithheldLines withheld(HerdRow herd, LocalDateTime moment, OptionalInt colostrumDays) {
        return withheld(herd, records.ofHerd(herd, moment.toLocalDate()), moment, colostrumDays);
    }

    private WithheldLines withheld(
            HerdRow herd, List<CowRecord> read, LocalDateTime moment, OptionalInt colostrumDays) {
        LocalDate day = moment.toLocalDate();
        SettingsInForce inForce = settings.on(herd, day);
        WithheldMilk rules = inForce.withheld(colostrumDays);
        List<CowRecord> animals =
                read.stream().filter(record -> record.isBornBy(day)).toList();
        List<MilkedCow> milked = milk.of(herd, animals, day);
        List<WithheldLine> lines = new ArrayList<>();
        List<CowRecord> notRecorded = new ArrayList<>();
        boolean isAnyThere = false;
        for (int i = 0; i < animals.size(); i++) {
            CowRecord record = animals.get(i);
            CowState state = record.onDay(day).state();
            if (state == CowState.LEFT) {
                continue;
            }
            isAnyThere = true;
            rules.of(milked.get(i), moment).ifPresent(cow -> lines.add(new WithheldLine(record, state, cow)));
            if (state == CowState.IN_MILK
                    && WithheldMilk.lookedAt(milked.get(i), day.atStartOfDay(), moment)
                            .isEmpty()) {
                notRecorded.add(record);
            }
        }
        return new WithheldLines(rules, inForce.used(), lines, notRecorded, isAnyThere);
    }
}
