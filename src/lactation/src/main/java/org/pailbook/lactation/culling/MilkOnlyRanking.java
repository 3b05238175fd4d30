package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Where prices are not set, a herd in the order of milk alone: each cow's projected 305-day milk over the mean of her group, lowest first. It knows
 * neither money nor pregnancy, and every figure says so.
 */
public final class MilkOnlyRanking implements PublishedMethod {
    public static final MilkOnlyRanking LOWEST_FIRST = new MilkOnlyRanking();

    private static final int PERCENT = 100;

    private MilkOnlyRanking() {}

    /** One cow and her level; no value without a calving or a test day. */
    public record Listed(String cow, Figure levelPct) {}

    /** Lowest first; cows without a value at the end. */
    public List<Listed> of(List<CullingCow> cows, LocalDate asOf) {
        List<Listed> listed = new ArrayList<>();
        for (CullingCow cow : cows) {
            listed.add(new Listed(cow.cow(), level(cow, asOf)));
        }
        listed.sort(Comparator.comparingDouble(
                        (Listed one) -> one.levelPct().value().orElse(Double.POSITIVE_INFINITY))
                .thenComparing(Listed::cow));
        return List.copyOf(listed);
    }

    private Figure level(CullingCow cow, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, "%", asOf).noInterval("see the interval of her projection");
        if (cow.calvingDate().isEmpty()) {
            return figure.finding(Finding.of(FindingCode.NO_CALVING)).build();
        }
        figure.input(UsedInput.used("calving", cow.calvingDate().get()));
        if (cow.milk().equals(MilkLevel.NOT_KNOWN)) {
            return figure.finding(Finding.of(FindingCode.NO_TEST_DAYS)).build();
        }
        if (cow.milk().testDays() == 1) {
            figure.finding(Finding.of(FindingCode.MILK_LEVEL_OF_ONE_TEST));
        }
        double pct = cow.milk().ratio() * PERCENT;
        return figure.finding(Finding.of(FindingCode.PRICES_NOT_SET))
                .value(pct)
                .explanation(new Explanation(
                        List.of(new Explanation.Part(Sentence.of(SentenceCode.OVER_MEAN_OF_GROUP), pct))))
                .build();
    }

    @Override
    public String id() {
        return "milk-only-ranking";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation("This library", 2026, "order by milk level where no prices are known", HowKnown.OURS);
    }
}
