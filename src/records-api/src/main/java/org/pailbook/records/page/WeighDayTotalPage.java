package org.pailbook.records.page;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.records.entry.DayTotal;
import org.pailbook.records.exchange.FileUnit;

/**
 * The herd's milk of a day by its weights, against the tank.
 *
 * @param milk of all weights, with unit
 */
record WeighDayTotalPage(Shown shown, int inMilk, int weighed, int inPart, String milk, List<Line> lines) {
    /** One amount of the tank. */
    record Line(String at, String tank, String what, String amount, String difference) {}

    static WeighDayTotalPage of(Shown shown, DayTotal total) {
        return new WeighDayTotalPage(
                shown,
                total.cowsInMilk(),
                total.cowsWeighed(),
                total.cowsInPart(),
                shown.weight(OptionalDouble.of(total.milkKg()), 1),
                total.tank().stream().map(amount -> line(amount, total, shown)).toList());
    }

    private static Line line(DayTotal.TankAmount amount, DayTotal total, Shown shown) {
        double kg = amount.milkKg().orElseGet(() -> amount.milkLitres().orElseThrow() * FileUnit.LITRE.factor());
        String weight = shown.weight(OptionalDouble.of(kg), 0);
        return new Line(
                amount.at().atZone(shown.herd().zone()).format(DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm")),
                amount.tank(),
                PageWords.word(amount.isPickup() ? "total.pickup" : "total.reading"),
                amount.milkLitres().isPresent()
                        ? PageWords.with(
                                "total.litres", Shown.number(amount.milkLitres().getAsDouble(), 0), weight)
                        : weight,
                kg > 0 && total.cowsWeighed() > 0
                        ? String.format(java.util.Locale.ENGLISH, "%+.1f", 100 * (total.milkKg() - kg) / kg)
                        : Shown.NONE);
    }
}
