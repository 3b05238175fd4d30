package org.pailbook.records.page;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.pailbook.picture.PictureForm;
import org.pailbook.records.exchange.FileUnit;

/** In which unit weights are shown and typed; everything else of the service is in kg. */
enum MilkUnit {
    KG(FileUnit.KG),
    LB(FileUnit.LB);

    private final FileUnit unit;

    MilkUnit(FileUnit unit) {
        this.unit = unit;
    }

    static Optional<MilkUnit> of(String wireName) {
        return Arrays.stream(values())
                .filter(unit -> unit.wireName().equals(wireName))
                .findFirst();
    }

    String wireName() {
        return name().toLowerCase(Locale.ROOT);
    }

    double of(double amountKg) {
        return amountKg / unit.factor();
    }

    /** For pictures, whose numbers are handed over in kg. */
    PictureForm.WeightUnit ofPictures() {
        return new PictureForm.WeightUnit(wireName(), unit.factor());
    }

    /** What was typed, as it is kept: in kg. */
    double toKg(double amount) {
        return unit.converted(BigDecimal.valueOf(amount)).doubleValue();
    }
}
