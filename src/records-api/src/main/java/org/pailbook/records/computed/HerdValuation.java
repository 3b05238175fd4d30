package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.culling.CowValueTable;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InForce;
import org.pailbook.records.store.PriceRow;

/** Puts together what cows of a herd are valued by on a day: the herd, its prices, its settings. */
@ApplicationScoped
public class HerdValuation {
    private final HerdBreeding breeding;
    private final InForce inForce;
    private final HerdLearning learning;
    private final HerdSettings settings;

    @Inject
    HerdValuation(HerdBreeding breeding, InForce inForce, HerdLearning learning, HerdSettings settings) {
        this.breeding = breeding;
        this.inForce = inForce;
        this.learning = learning;
        this.settings = settings;
    }

    /**
     * @param money empty if there is no value in money; then {@code why} says what is wrong with the prices
     * @param about what stands with every figure
     */
    public record Valued(
            RankedHerd herd,
            Optional<ByMoney> money,
            Optional<Finding> why,
            UsedSettingsView used,
            List<Finding> about) {}

    /** @param keepOrReplace made when asked for: it solves the table */
    public record ByMoney(
            String currency,
            Supplier<KeepOrReplace> keepOrReplace,
            List<AssumedView> assumed,
            List<OwnPregnanciesView> ownPregnancies) {}

    public Valued of(HerdRow herd, LocalDate day) {
        List<HerdBreeding.BredCow> bred = breeding.of(herd, day);
        RankedHerd ranked = RankedHerd.of(
                bred,
                learning.teach(
                        herd,
                        day,
                        bred.stream().map(one -> one.record().onDay(day)).toList()));
        SettingsInForce own = settings.on(herd, day);
        BreedingSettings breedingSettings = own.breeding();
        double closeCu = own.closeCallCu();
        OwnPregnancies pregnancies = OwnPregnancies.of(bred, breedingSettings, day);
        HerdParameters parameters = pregnancies.appliedTo(ranked.parameters(day));
        Optional<HerdPrices> known = inForce.on(PriceRow.class, herd, day).flatMap(HerdPrices::of);
        if (known.isEmpty() || !CowValueTable.hasValue(known.get().prices(), parameters)) {
            FindingCode why = known.isEmpty() ? FindingCode.PRICES_NOT_SET : FindingCode.PRICES_CONTRADICT;
            return new Valued(ranked, Optional.empty(), Optional.of(Finding.of(why)), own.used(), List.of());
        }
        List<AssumedView> assumed = new ArrayList<>(known.get().assumed());
        for (int parity = 1; parity <= parameters.groups().size(); parity++) {
            assumed.addAll(pregnancies.assumed(parity, parameters));
        }
        List<Finding> about = new ArrayList<>(AssumedView.findings(assumed));
        if (!ranked.hasOwnCurve()) {
            about.add(Finding.of(FindingCode.CURVE_NOT_OF_HERD));
        }
        ByMoney money = new ByMoney(
                known.get().currency(),
                () -> KeepOrReplace.with(known.get().prices(), parameters, List.of())
                        .closeWithinCu(closeCu),
                assumed,
                pregnancies.views(parameters));
        return new Valued(ranked, Optional.of(money), Optional.empty(), own.used(), about);
    }
}
