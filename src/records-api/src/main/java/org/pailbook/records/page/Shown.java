package org.pailbook.records.page;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.picture.PictureForm;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.HerdRow;

/**
 * How a page shows things: which herd, for which day, in which unit; and the links that keep it so.
 *
 * @param askedFor whether the day was chosen; else it is today, and links leave it out
 * @param usual unit by the herd's settings, which links leave out
 * @param mayWrite whether whoever reads may also enter and change
 */
record Shown(HerdRow herd, LocalDate asOf, boolean askedFor, MilkUnit unit, MilkUnit usual, boolean mayWrite) {
    static final String NONE = "\u2013";

    public String code() {
        return herd.code;
    }

    public String herdName() {
        return herd.name;
    }

    /** Whether a form that goes back to the page must say the unit. */
    public boolean isOtherUnit() {
        return unit != usual;
    }

    public String unitName() {
        return unit.wireName();
    }

    public boolean isPounds() {
        return unit == MilkUnit.LB;
    }

    /** Address of a page of the herd. */
    public String page(String rest) {
        return "/pages/herds/" + herd.code + rest + query(List.of());
    }

    /** The same in the other unit. */
    public String otherUnit(String rest) {
        MilkUnit other = isPounds() ? MilkUnit.KG : MilkUnit.LB;
        return "/pages/herds/" + herd.code + rest
                + new Shown(herd, asOf, askedFor, other, usual, mayWrite).query(List.of());
    }

    public String numbered(String rest, int number) {
        return "/pages/herds/" + herd.code + rest + query(List.of("page=" + number));
    }

    public String cow(AnimalIdentifier animal) {
        return page(cowPath(animal));
    }

    static String cowPath(AnimalIdentifier animal) {
        return "/animals/" + animal.pathSegment();
    }

    public String lactation(AnimalIdentifier animal, int parity) {
        return "/pages/herds/" + herd.code + cowPath(animal) + query(List.of("parity=" + parity));
    }

    private String query(List<String> more) {
        List<String> parts = new ArrayList<>(more);
        if (askedFor) {
            parts.add("asOf=" + asOf);
        }
        if (unit != usual) {
            parts.add("unit=" + unitName());
        }
        return parts.isEmpty() ? "" : "?" + String.join("&", parts);
    }

    /** Weight with its unit, 7,390 kg. */
    String weight(OptionalDouble kg, int decimals) {
        return kg.isEmpty() ? NONE : number(unit.of(kg.getAsDouble()), decimals) + "\u00a0" + unitName();
    }

    /** Weight without unit, for a table whose heading has it. */
    String plainWeight(OptionalDouble kg, int decimals) {
        return kg.isEmpty() ? NONE : number(unit.of(kg.getAsDouble()), decimals);
    }

    /** Both ends, 6,860 to 7,920. */
    String ends(Optional<Interval> kg, int decimals) {
        return kg.map(ends -> PageWords.with(
                        "interval", number(unit.of(ends.low()), decimals), number(unit.of(ends.high()), decimals)))
                .orElse(NONE);
    }

    /** How a picture is drawn in a page for this reader. */
    PictureForm picture() {
        return PictureForm.PAGE
                .in(Locale.forLanguageTag(PageWords.lang()), Shown::number)
                .withWeightsIn(unit.ofPictures());
    }

    static String number(double value, int decimals) {
        return PageLanguage.current().number(value, decimals);
    }

    static String number(OptionalDouble value, int decimals) {
        return value.isEmpty() ? NONE : number(value.getAsDouble(), decimals);
    }
}
