package org.pailbook.records.page;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.text.Normalizer;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.pailbook.records.problem.Fault;

/** The forms that lead from an empty service to the first cow. */
final class StartPages {
    /** How an ear tag is known when nobody says whose numbers they are. Ours. */
    static final String SCHEME = "eartag";

    private static final int LONGEST_CODE = 40;
    private static final List<String> ZONES = ZoneId.getAvailableZoneIds().stream()
            .filter(zone ->
                    zone.matches("(Africa|America|Antarctica|Asia|Atlantic|Australia|Europe|Indian|Pacific)/.*"))
            .sorted()
            .toList();

    private StartPages() {}

    /**
     * A cow to put in.
     *
     * @param isFirst whether the herd has none yet
     */
    record NewCowPage(Shown shown, boolean isFirst, List<FormField> fields, List<String> faults) {
        static NewCowPage of(Shown shown, boolean isFirst, PageForm form) {
            return new NewCowPage(shown, isFirst, form.fields(), form.otherFaults());
        }
    }

    static PageForm herd(Map<String, String> values, List<Fault> faults) {
        return new PageForm("start", values, faults)
                .needed("text", "name")
                .choice("timeZone", true, ZONES)
                .choice("milkUnit", false, List.of("kg", "lb"));
    }

    static PageForm cow(Map<String, String> values, List<Fault> faults, MilkUnit unit) {
        return new PageForm("start", values, faults)
                .needed("text", "tag")
                .field("text", "cowName")
                .field("text", "breed")
                .needed("date", "calvedOn")
                .needed("number", "parity")
                .field("date", "testedOn")
                .field("number", unit == MilkUnit.LB ? "milkLb" : "milkKg")
                .field("number", "fatPct")
                .field("number", "proteinPct")
                .field("number", "sccThousandPerMl");
    }

    /** A code from a name: Ash Lane becomes ash-lane. */
    static String code(String name) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFD)
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\p{M}+", "")
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-|-$", "");
        String code = plain.length() > LONGEST_CODE - 4 ? plain.substring(0, LONGEST_CODE - 4) : plain;
        return code.isEmpty() ? "herd" : code;
    }

    static ObjectNode animal(Map<String, String> typed) {
        ObjectNode animal = JsonNodeFactory.instance.objectNode();
        animal.putArray("identifiers").addObject().put("scheme", SCHEME).put("id", text(typed, "tag"));
        put(animal, "name", typed, "cowName");
        put(animal, "breed", typed, "breed");
        return animal;
    }

    static ObjectNode calving(Map<String, String> typed) {
        ObjectNode calving = ofCow(typed);
        put(calving, "date", typed, "calvedOn");
        number(calving, "parity", typed, "parity");
        return calving;
    }

    static boolean hasTest(Map<String, String> typed) {
        return List.of("testedOn", "milkKg", "milkLb", "fatPct", "proteinPct", "sccThousandPerMl").stream()
                .anyMatch(name -> !text(typed, name).isEmpty());
    }

    static ObjectNode testDay(Map<String, String> typed) {
        ObjectNode test = ofCow(typed);
        put(test, "date", typed, "testedOn");
        number(test, "milkKg", typed, "milkKg");
        number(test, "milkKg", typed, "milkLb");
        if (!text(typed, "milkLb").isEmpty() && test.get("milkKg").isNumber()) {
            test.put("milkKg", test.get("milkKg").doubleValue() / MilkUnit.LB.of(1));
        }
        number(test, "fatPct", typed, "fatPct");
        number(test, "proteinPct", typed, "proteinPct");
        number(test, "sccThousandPerMl", typed, "sccThousandPerMl");
        return test;
    }

    private static ObjectNode ofCow(Map<String, String> typed) {
        ObjectNode event = JsonNodeFactory.instance.objectNode();
        event.putObject("animal").put("scheme", SCHEME).put("id", text(typed, "tag"));
        return event;
    }

    private static void put(ObjectNode content, String member, Map<String, String> typed, String field) {
        if (!text(typed, field).isEmpty()) {
            content.put(member, text(typed, field));
        }
    }

    private static void number(ObjectNode content, String member, Map<String, String> typed, String field) {
        if (!text(typed, field).isEmpty()) {
            PageForm.putNumber(content, member, text(typed, field));
        }
    }

    static String text(Map<String, String> typed, String field) {
        return typed.getOrDefault(field, "").strip();
    }
}
