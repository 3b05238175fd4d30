package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Answers for single cows of a herd whether keeping them is worth more than replacing them. Made once for many cows: the table is solved for
 * the prices as they are and with milk and heifer 20 % lower and higher. Immutable; many threads may use one.
 *
 * <p>A close call is a pay-off nearer to zero than {@value #CLOSE_CU} cu unless told otherwise, or one whose sign changes with a price (ours).
 */
public final class KeepOrReplace {
    /** Pay-offs nearer to zero than this are too small to decide by. Ours. */
    public static final double CLOSE_CU = 100;

    private static final double PRICE_CHANGE = 0.20;

    private final Valuation base;
    private final Map<PayoffRange.Change, Valuation> changed;
    private final SteadyState herd;
    private final List<Finding> about;
    private final double closeCu;

    private KeepOrReplace(
            Valuation base,
            Map<PayoffRange.Change, Valuation> changed,
            SteadyState herd,
            List<Finding> about,
            double closeCu) {
        this.closeCu = closeCu;
        this.base = base;
        this.changed = changed;
        this.herd = herd;
        this.about = about;
    }

    /**
     * @param about what was put in for prices and parameters nobody gave; stands with every answer
     * @throws IllegalArgumentException unless {@link CowValueTable#hasValue}
     */
    public static KeepOrReplace with(CullingPrices prices, HerdParameters parameters, List<Finding> about) {
        Valuation base = new Valuation(CowValueTable.solve(prices, parameters));
        List<Finding> findings = new ArrayList<>(about);
        Map<PayoffRange.Change, Valuation> changed = new EnumMap<>(PayoffRange.Change.class);
        for (PayoffRange.Change change : PayoffRange.Change.values()) {
            if (change.isOfPrice()) {
                CullingPrices other = changed(prices, change);
                if (CowValueTable.hasValue(other, parameters)) {
                    changed.put(change, new Valuation(CowValueTable.solve(other, parameters)));
                } else {
                    findings.add(Finding.of(FindingCode.PRICE_CHANGE_LEFT_OUT).withSeen(change.said()));
                }
            }
        }
        return new KeepOrReplace(base, changed, base.table().steadyState(), List.copyOf(findings), CLOSE_CU);
    }

    /**
     * The same with another size of a close call.
     *
     * @param cu 0 or more
     */
    public KeepOrReplace closeWithinCu(double cu) {
        if (!(cu >= 0)) {
            throw new IllegalArgumentException("cu (" + cu + ") must be 0 or more");
        }
        return new KeepOrReplace(base, changed, herd, about, cu);
    }

    private static CullingPrices changed(CullingPrices prices, PayoffRange.Change change) {
        return switch (change) {
            case MILK_PRICE_LOWER -> prices.withMilkCuPerKg(prices.milkCuPerKg() * (1 - PRICE_CHANGE));
            case MILK_PRICE_HIGHER -> prices.withMilkCuPerKg(prices.milkCuPerKg() * (1 + PRICE_CHANGE));
            case HEIFER_CHEAPER -> prices.withHeiferCu(prices.heiferCu() * (1 - PRICE_CHANGE));
            case HEIFER_DEARER -> prices.withHeiferCu(prices.heiferCu() * (1 + PRICE_CHANGE));
            case LEVEL_LOWER, LEVEL_HIGHER -> prices;
        };
    }

    /** The table under the prices as they are. */
    public CowValueTable table() {
        return base.table();
    }

    /** The herd of the model in the long run. */
    public SteadyState herd() {
        return herd;
    }

    /** What was put in for prices and parameters nobody gave, and price changes left out. */
    public List<Finding> about() {
        return about;
    }

    /** One cow on a day. */
    public CowOutlook of(CullingCow cow, LocalDate asOf) {
        Optional<Finding> missing = missing(cow, asOf);
        if (missing.isPresent()) {
            return CowOutlook.without(
                    cow.cow(),
                    Figure.of(RetentionPayoff.BY_DYNAMIC_PROGRAMMING, "cu", asOf)
                            .noInterval(SentenceCode.NO_VALUE)
                            .finding(missing.get())
                            .build());
        }
        LocalDate calvingDate = cow.calvingDate().orElseThrow();
        CowPlace place = CowPlace.of(cow, calvingDate, asOf);
        HealthBurden burden = cow.health().orElse(HealthBurden.NONE);
        Valuation own = base.withBurden(burden);
        double level = cow.milk().ratio();
        Figure payoff = payoff(cow, place, own, asOf);
        PayoffRange range = range(cow, place, own, payoff.orThrow());
        return new CowOutlook(
                cow.cow(),
                payoff,
                Optional.of(range),
                Optional.of(suggestion(payoff.orThrow(), range)),
                new Reasons(base, own, herd).of(cow, place, payoff.orThrow()),
                BesideThePayoff.alternative(place, own, level, payoff.orThrow(), calvingDate, asOf),
                BesideThePayoff.pregnancyValue(place, own, level, asOf),
                BesideThePayoff.simplerRules(place, own, level, asOf));
    }

    /**
     * What the pregnancy of one cow is worth, as in {@link #of}; alone it is quicker, for lists of many. Empty for a cow that is not bred any more,
     * past the months in which cows are bred, or without a calving.
     */
    public Optional<Figure> pregnancyValue(CullingCow cow, LocalDate asOf) {
        if (missing(cow, asOf).isPresent()) {
            return Optional.empty();
        }
        return BesideThePayoff.pregnancyValue(
                CowPlace.of(cow, cow.calvingDate().orElseThrow(), asOf),
                base.withBurden(cow.health().orElse(HealthBurden.NONE)),
                cow.milk().ratio(),
                asOf);
    }

    private static Optional<Finding> missing(CullingCow cow, LocalDate asOf) {
        if (cow.calvingDate().isEmpty()) {
            return Optional.of(Finding.of(FindingCode.NO_CALVING));
        }
        LocalDate calved = cow.calvingDate().get();
        Optional<LocalDate> later = cow.pregnancy().date().filter(day -> day.isBefore(calved) || day.isAfter(asOf));
        if (calved.isAfter(asOf) || later.isPresent()) {
            return Optional.of(Finding.on(later.orElse(calved), FindingCode.DATES_OUT_OF_ORDER)
                    .withSeen(later.map(day -> Sentence.of(SentenceCode.CALVED_THEN_CONCEIVED, calved, day))
                            .orElseGet(() -> Sentence.of(SentenceCode.CALVED, calved)))
                    .withExpected(SentenceCode.CALVING_THEN_CONCEPTION, asOf));
        }
        return Optional.empty();
    }

    private Figure payoff(CullingCow cow, CowPlace place, Valuation own, LocalDate asOf) {
        Explanation parts = new Explanation(own.partsCu(place, cow.milk().ratio()));
        Figure.Builder figure = Figure.of(RetentionPayoff.BY_DYNAMIC_PROGRAMMING, "cu", asOf)
                .noInterval(SentenceCode.RANGE_IN_ITS_PLACE)
                .input(UsedInput.used("calving", cow.calvingDate().orElseThrow()))
                .findings(about)
                .findings(place.findings());
        cow.pregnancy()
                .date()
                .ifPresent(day -> figure.input(UsedInput.used(
                        cow.pregnancy().kind() == PregnancyState.Kind.INSEMINATED ? "insemination" : "conception",
                        day)));
        if (cow.milk().testDays() == 0) {
            figure.finding(Finding.of(FindingCode.MILK_LEVEL_ASSUMED)
                    .withSeen(
                            cow.milk().equals(MilkLevel.NOT_KNOWN)
                                    ? SentenceCode.NO_TEST_DAY
                                    : SentenceCode.GIVEN_WITHOUT_TEST_DAYS));
        } else if (cow.milk().testDays() == 1) {
            figure.finding(Finding.of(FindingCode.MILK_LEVEL_OF_ONE_TEST));
        }
        if (cow.health().isEmpty()) {
            figure.finding(Finding.of(FindingCode.HEALTH_NOT_VALUED));
        }
        return figure.value(parts.total()).explanation(parts).build();
    }

    private PayoffRange range(CullingCow cow, CowPlace place, Valuation own, double payoffCu) {
        HealthBurden burden = cow.health().orElse(HealthBurden.NONE);
        double level = cow.milk().ratio();
        List<PayoffRange.Shift> shifts = new ArrayList<>();
        changed.forEach((change, valuation) -> shifts.add(
                new PayoffRange.Shift(change, valuation.withBurden(burden).payoffCu(place, level))));
        cow.milk().standardError().ifPresent(error -> {
            shifts.add(new PayoffRange.Shift(
                    PayoffRange.Change.LEVEL_LOWER, own.payoffCu(place, Math.max(0, level - error))));
            shifts.add(new PayoffRange.Shift(PayoffRange.Change.LEVEL_HIGHER, own.payoffCu(place, level + error)));
        });
        return PayoffRange.of(payoffCu, shifts);
    }

    private Suggestion suggestion(double payoffCu, PayoffRange range) {
        boolean turns = range.shifts().stream()
                .filter(shift -> shift.change().isOfPrice())
                .anyMatch(shift -> (shift.payoffCu() < 0) != (payoffCu < 0));
        if (turns || Math.abs(payoffCu) < closeCu) {
            return Suggestion.CLOSE_CALL;
        }
        return payoffCu < 0 ? Suggestion.CONSIDER_REPLACING : Suggestion.WORTH_KEEPING;
    }
}
