package org.pailbook.records.computed;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.culling.PregnancyValue;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.summary.CowOnDay;

/** What pregnancies are worth in a herd, by the same table the herd's ranking is made from; nothing where prices lack or contradict. */
public final class PregnancyWorth {
    static final PregnancyWorth NOT_KNOWN = new PregnancyWorth(Optional.empty(), Map.of());

    /** Empty without prices. */
    private final Optional<Yardstick> yardstick;

    private final Map<String, CowOnDay> cows;

    private PregnancyWorth(Optional<Yardstick> yardstick, Map<String, CowOnDay> cows) {
        this.yardstick = yardstick;
        this.cows = cows;
    }

    /** @param cows taught what is known of the herd */
    static PregnancyWorth by(Yardstick yardstick, List<CowOnDay> cows) {
        return new PregnancyWorth(
                Optional.of(yardstick), cows.stream().collect(Collectors.toMap(CowOnDay::animal, Function.identity())));
    }

    private Optional<Yardstick.ByMoney> money() {
        return yardstick.flatMap(Yardstick::money);
    }

    /** Of every sum of money; empty without a value. */
    public Optional<String> currency() {
        return money().map(Yardstick.ByMoney::currency);
    }

    /** Of one cow; of one served, if she took; of an open one, of a conception in this month. Empty for heifers and cows not bred. */
    public Optional<Figure> of(HerdBreeding.BredCow one, LocalDate day) {
        return money().flatMap(by -> RankedHerd.candidate(
                        one.record(), cows.get(one.record().id()), one::breeding)
                .map(cow -> RankedHerd.cow(cow, yardstick.orElseThrow().groupMeanKg()))
                .flatMap(cow -> by.keepOrReplace().get().pregnancyValue(cow, day)));
    }

    /** Mean over conceptions in the herd of the model. */
    public Optional<Figure> meanOfNewPregnancies(LocalDate day) {
        return values().map(one -> PregnancyValue.PREGNANT_OVER_OPEN.meanOfNewPregnancies(one.herd(), day));
    }

    /** What a lost one costs, mean over losses. */
    public Optional<Figure> meanCostOfLosses(LocalDate day) {
        return values().map(one -> PregnancyValue.PREGNANT_OVER_OPEN.meanCostOfLosses(one.herd(), day));
    }

    private Optional<KeepOrReplace> values() {
        return money().map(one -> one.keepOrReplace().get());
    }

    /** What stood in for what is not recorded. */
    public List<AssumedView> assumed() {
        return money().map(Yardstick.ByMoney::assumed).orElse(List.of());
    }

    /** What stands with every value; without one, why there is none. */
    public List<Finding> findings() {
        if (money().isEmpty()) {
            return List.of(Finding.of(FindingCode.PRICES_NEEDED));
        }
        return Stream.concat(
                        yardstick.orElseThrow().about().stream(),
                        values().map(KeepOrReplace::about).orElse(List.of()).stream())
                .toList();
    }
}
