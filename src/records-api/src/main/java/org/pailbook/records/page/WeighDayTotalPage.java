package org.pailbook.records.page;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.summary.TankGap;
import org.pailbook.records.entry.DayTotal;
import org.pailbook.records.exchange.FileUnit;

/**
 * The herd's milk of a day by its weights, against the tank.
 *
 * @param milk of all weights, with unit
 * @param used by other records of the day than the tank's, with unit; empty text if nothing
 */
record WeighDayTotalPage(Shown shown, int inMilk, int weighed, int inPart, String milk, String used, List<Line> lines) {
    /**
     * One amount of the tank.
     *
     * @param told what to do about the difference; empty text if it is small
     */
    record Line(String at, String tank, String what, String amount, String difference, String told) {}

    static WeighDayTotalPage of(Shown shown, DayTotal total) {
        return new WeighDayTotalPage(
                shown,
                total.cowsInMilk(),
                total.cowsWeighed(),
                total.cowsInPart(),
                shown.weight(OptionalDouble.of(total.milkKg()), 1),
                total.usedKg() > 0 ? shown.weight(OptionalDouble.of(total.usedKg()), 1) : "",
                total.tank().stream().map(amount -> line(amount, total, shown)).toList());
    }

    private static Line line(DayTotal.TankAmount amount, DayTotal total, Shown shown) {
        double kg = amount.milkKg().orElseGet(() -> amount.milkLitres().orElseThrow() * FileUnit.LITRE.factor());
        Optional<TankGap> gap = kg > 0 && total.cowsWeighed() > 0
                ? Optional.of(new TankGap(shown.asOf(), total.milkKg(), kg + total.usedKg()))
                : Optional.empty();
        String weight = shown.weight(OptionalDouble.of(kg), 0);
        return new Line(
                amount.at().atZone(shown.herd().zone()).format(DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm")),
                amount.tank(),
                PageWords.word(amount.isPickup() ? "total.pickup" : "total.reading"),
                amount.milkLitres().isPresent()
                        ? PageWords.with(
                                "total.litres", Shown.number(amount.milkLitres().getAsDouble(), 0), weight)
                        : weight,
                gap.map(one -> String.format(Locale.ENGLISH, "%+.1f", one.percent()))
                        .orElse(Shown.NONE),
                gap.filter(one -> isComparable(total))
                        .flatMap(TankGap::finding)
                        .flatMap(Finding::saidSeen)
                        .map(seen -> Said.in(seen, shown))
                        .orElse(""));
    }

    /** With a cow not weighed, or milk in two amounts, a difference says nothing about the weights. */
    private static boolean isComparable(DayTotal total) {
        return total.cowsWeighed() == total.cowsInMilk()
                && total.cowsInPart() == 0
                && total.tank().size() == 1;
    }
}
