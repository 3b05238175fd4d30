package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.pailbook.lactation.culling.CowValueTable;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.HerdOnDay;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InForce;
import org.pailbook.records.store.KeptByState;
import org.pailbook.records.store.PriceRow;

/** Puts together what cows of a herd are valued by on a day: the herd, its prices, its settings. */
@ApplicationScoped
public class HerdValuation {
    /** Some 300 kB each, the solved tables being most of it. Ours. */
    private static final int MOST_YARDSTICKS = 16;

    private final HerdBreeding breeding;
    private final HerdExits exits;
    private final InForce inForce;
    private final HerdLearning learning;
    private final HerdSettings settings;
    private final KeptByState<Yardstick> yardsticks = new KeptByState<>(MOST_YARDSTICKS);

    @Inject
    HerdValuation(
            HerdBreeding breeding, HerdExits exits, InForce inForce, HerdLearning learning, HerdSettings settings) {
        this.breeding = breeding;
        this.exits = exits;
        this.inForce = inForce;
        this.learning = learning;
        this.settings = settings;
    }

    /** A herd and what its cows are held against. */
    public record Valued(RankedHerd herd, Yardstick by) {
        public List<CullingCow> cows() {
            return herd.cows(by.groupMeanKg());
        }
    }

    /** All cows of a herd. */
    public Valued of(HerdRow herd, LocalDate day) {
        List<HerdBreeding.BredCow> bred = breeding.of(herd, day);
        List<CowOnDay> cows = learning.teach(
                herd, day, bred.stream().map(one -> one.record().onDay(day)).toList());
        RankedHerd ranked = RankedHerd.of(bred, cows);
        return new Valued(ranked, yardsticks.of(herd, day, () -> yardstick(herd, day, bred, cows, ranked)));
    }

    /** What a herd's cows are held against; the herd is read only if nothing is kept of it as it is. */
    public Yardstick yardstick(HerdRow herd, LocalDate day) {
        return yardsticks.of(herd, day, () -> of(herd, day).by());
    }

    /**
     * What pregnancies are worth in a herd whose cows have been read already; nothing is worked out without prices.
     *
     * @param bred all of the herd
     */
    public PregnancyWorth pregnancies(HerdRow herd, List<HerdBreeding.BredCow> bred, LocalDate day) {
        if (inForce.on(PriceRow.class, herd, day).flatMap(HerdPrices::of).isEmpty()) {
            return PregnancyWorth.NOT_KNOWN;
        }
        List<CowOnDay> cows = learning.teach(
                herd, day, bred.stream().map(one -> one.record().onDay(day)).toList());
        Yardstick by = yardsticks.of(herd, day, () -> yardstick(herd, day, bred, cows, RankedHerd.of(bred, cows)));
        return PregnancyWorth.by(by, cows);
    }

    /** One cow alone; empty if she is neither in milk nor dry. */
    public Optional<CullingCow> cow(HerdRow herd, CowRecord record, LocalDate day, Yardstick by) {
        return RankedHerd.candidate(
                        record,
                        record.onDay(day).withHerd(learning.of(herd, day)),
                        () -> breeding.of(herd, record, day))
                .map(one -> RankedHerd.cow(one, by.groupMeanKg()));
    }

    private Yardstick yardstick(
            HerdRow herd, LocalDate day, List<HerdBreeding.BredCow> bred, List<CowOnDay> cows, RankedHerd ranked) {
        List<Finding> lacks = HerdOnDay.of(cows, day).lacks();
        SettingsInForce own = settings.on(herd, day);
        OwnFigures figures = OwnFigures.of(bred, own.breeding(), exits.of(herd, cows, day), day);
        double closeCu = own.closeCallCu();
        HerdParameters parameters = figures.appliedTo(ranked.parameters(day));
        Optional<HerdPrices> known = inForce.on(PriceRow.class, herd, day).flatMap(HerdPrices::of);
        if (known.isEmpty() || !CowValueTable.hasValue(known.get().prices(), parameters)) {
            FindingCode why = known.isEmpty() ? FindingCode.PRICES_NOT_SET : FindingCode.PRICES_CONTRADICT;
            return new Yardstick(
                    ranked.groupMeanKg(), Optional.empty(), Optional.of(Finding.of(why)), own.used(), lacks);
        }
        List<AssumedView> assumed = new ArrayList<>(known.get().assumed());
        for (int parity = 1; parity <= parameters.groups().size(); parity++) {
            assumed.addAll(figures.assumed(parity, parameters));
        }
        List<Finding> about = new ArrayList<>(lacks);
        about.addAll(AssumedView.findings(assumed));
        if (!ranked.hasOwnCurve()) {
            about.add(Finding.of(FindingCode.CURVE_NOT_OF_HERD));
        }
        Yardstick.ByMoney money = new Yardstick.ByMoney(
                known.get().currency(),
                once(() -> KeepOrReplace.with(known.get().prices(), parameters, List.of())
                        .closeWithinCu(closeCu)),
                assumed,
                figures.pregnancies(parameters),
                figures.exits(parameters));
        return new Yardstick(ranked.groupMeanKg(), Optional.of(money), Optional.empty(), own.used(), about);
    }

    private static Supplier<KeepOrReplace> once(Supplier<KeepOrReplace> made) {
        return new Supplier<>() {
            private KeepOrReplace value;

            @Override
            public synchronized KeepOrReplace get() {
                if (value == null) {
                    value = made.get();
                }
                return value;
            }
        };
    }
}
