package org.pailbook.records.page;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.HerdRow;

/**
 * How a page shows things: which herd, for which day, in which unit; and the links that keep it so.
 *
 * @param askedFor whether the day was chosen; else it is today, and links leave it out
 */
record Shown(HerdRow herd, LocalDate asOf, boolean askedFor, MilkUnit unit) {
    static final String NONE = "\u2013";

    public String code() {
        return herd.code;
    }

    public String herdName() {
        return herd.name;
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
        return "/pages/herds/" + herd.code + rest + new Shown(herd, asOf, askedFor, other).query(List.of());
    }

    public String numbered(String rest, int number) {
        return "/pages/herds/" + herd.code + rest + query(List.of("page=" + number));
    }

    public String cow(AnimalIdentifier animal) {
        return page(cowPath(animal));
    }

    static String cowPath(AnimalIdentifier animal) {
        String reference = animal.scheme().equals("id") ? animal.id() : animal.scheme() + ":" + animal.id();
        return "/animals/"
                + URLEncoder.encode(reference, StandardCharsets.UTF_8).replace("+", "%20");
    }

    public String lactation(AnimalIdentifier animal, int parity) {
        return "/pages/herds/" + herd.code + cowPath(animal) + query(List.of("parity=" + parity));
    }

    private String query(List<String> more) {
        List<String> parts = new ArrayList<>(more);
        if (askedFor) {
            parts.add("asOf=" + asOf);
        }
        if (isPounds()) {
            parts.add("unit=lb");
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

    static String number(double value, int decimals) {
        return String.format(Locale.ENGLISH, "%,." + decimals + "f", value);
    }

    static String number(OptionalDouble value, int decimals) {
        return value.isEmpty() ? NONE : number(value.getAsDouble(), decimals);
    }
}
