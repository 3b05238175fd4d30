package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.event.ForemilkCheck;
import org.pailbook.lactation.event.Treatment;
import org.pailbook.lactation.figure.Measured;

/** When to see the veterinarian about udders. The thresholds are ours; a veterinarian who knows the herd may set others. */
public enum VeterinaryTrigger {
    TODAY(
            "today",
            "Abnormal milk with a hard, hot or painful quarter, or the cow is ill: call your veterinarian today."),
    FRESH_COW("freshCow", "Blood or watery milk in a fresh cow: see your veterinarian."),
    THIRD_CASE("thirdCase", "Third case in one lactation: see your veterinarian."),
    NOT_BETTER(
            "notBetter",
            "Abnormal milk after the withholding entered for her treatment was over: see your veterinarian."),
    NEW_INFECTIONS(
            "newInfections",
            "New infection risk above 15 % at two tests running, 30 or more at risk: see your veterinarian."),
    TANK_ABOVE_LIMIT(
            "tankAboveLimit", "The tank is above the limit chosen: see your veterinarian, and ask your buyer."),
    FRESH_HEIFERS("freshHeifers", "More than 25 % of 8 or more fresh heifers are high: see your veterinarian.");

    /** To be shown with every list. */
    public static final String CAUTION =
            "A cell count points at cows to look at; it diagnoses nothing and picks no drug. "
                    + "Any question about a drug is for your veterinarian.";

    private static final int FRESH_DAYS = 21;
    private static final int THIRD = 3;
    private static final double MANY_NEW_PCT = 15;
    private static final int ENOUGH_AT_RISK = 30;
    private static final double MANY_HEIFERS_PCT = 25;
    private static final int ENOUGH_HEIFERS = 8;
    private static final int LATE_DAYS = 3;

    private final String wireName;
    private final String words;

    VeterinaryTrigger(String wireName, String words) {
        this.wireName = wireName;
        this.words = words;
    }

    public String wireName() {
        return wireName;
    }

    /** One sentence for the farmer. */
    public String words() {
        return words;
    }

    /**
     * What one cow's foremilk checks say: of the last three days, and of the cases since she calved.
     *
     * @param lastCalving empty if not recorded: then only the checks of the last days count
     */
    public static List<VeterinaryTrigger> ofCow(
            List<ForemilkCheck> checks, Optional<LocalDate> lastCalving, LocalDate asOf) {
        List<VeterinaryTrigger> triggers = new ArrayList<>();
        List<ForemilkCheck> late = late(checks, asOf);
        if (late.stream().anyMatch(check -> check.cowIll() || isSore(check.udder()))) {
            triggers.add(TODAY);
        }
        if (lastCalving.isPresent()) {
            boolean fresh = ChronoUnit.DAYS.between(lastCalving.get(), asOf) <= FRESH_DAYS;
            if (fresh
                    && late.stream()
                            .anyMatch(check -> check.milk() == ForemilkCheck.Milk.BLOOD
                                    || check.milk() == ForemilkCheck.Milk.WATERY)) {
                triggers.add(FRESH_COW);
            }
            if (UdderCases.of(checks, lastCalving.get(), asOf).size() >= THIRD) {
                triggers.add(THIRD_CASE);
            }
        }
        return triggers;
    }

    /** Abnormal checks of the last days. */
    private static List<ForemilkCheck> late(List<ForemilkCheck> checks, LocalDate asOf) {
        return checks.stream()
                .filter(ForemilkCheck::isAbnormal)
                .filter(check -> !check.at().toLocalDate().isAfter(asOf)
                        && check.at().toLocalDate().isAfter(asOf.minusDays(LATE_DAYS)))
                .toList();
    }

    /**
     * Whether a cow is not better after the time given: abnormal milk in the last three days, after the withholding entered for a treatment was over and
     * at most {@value UdderCases#SAME_CASE_DAYS} days after it. A treatment without an end entered gives no time, and what it was for is not known
     * here. Reading the withholding as the time given is ours.
     */
    public static Optional<VeterinaryTrigger> ofTreatedCow(
            List<ForemilkCheck> checks, List<Treatment> treatments, LocalDate asOf) {
        boolean notBetter = late(checks, asOf).stream()
                .anyMatch(check -> treatments.stream()
                        .flatMap(treatment -> treatment.milkWithheldUntil().stream())
                        .anyMatch(end -> end.isOver(check.at())
                                && !check.at().toLocalDate().isAfter(end.date().plusDays(UdderCases.SAME_CASE_DAYS))));
        return notBetter ? Optional.of(NOT_BETTER) : Optional.empty();
    }

    private static boolean isSore(ForemilkCheck.Udder udder) {
        return udder == ForemilkCheck.Udder.HARD
                || udder == ForemilkCheck.Udder.HOT
                || udder == ForemilkCheck.Udder.PAINFUL;
    }

    /**
     * What a herd's counts say.
     *
     * @param newInfectionRisks of the herd's tests in order, the last two are looked at
     * @param freshHeifersHigh of the year
     * @param tank against the limit chosen, if one was
     */
    public static List<VeterinaryTrigger> ofHerd(
            List<Measured> newInfectionRisks, Measured freshHeifersHigh, Optional<TankStanding> tank) {
        List<VeterinaryTrigger> triggers = new ArrayList<>();
        int tests = newInfectionRisks.size();
        if (tests >= 2
                && newInfectionRisks.subList(tests - 2, tests).stream()
                        .allMatch(risk -> isAbove(risk, MANY_NEW_PCT, ENOUGH_AT_RISK))) {
            triggers.add(NEW_INFECTIONS);
        }
        if (tank.filter(standing -> standing.standing() == TankStanding.Standing.ABOVE)
                .isPresent()) {
            triggers.add(TANK_ABOVE_LIMIT);
        }
        if (isAbove(freshHeifersHigh, MANY_HEIFERS_PCT, ENOUGH_HEIFERS)) {
            triggers.add(FRESH_HEIFERS);
        }
        return triggers;
    }

    private static boolean isAbove(Measured share, double percent, int enough) {
        return share.denominator() >= enough
                && share.figure().value().isPresent()
                && share.figure().orThrow() > percent;
    }
}
