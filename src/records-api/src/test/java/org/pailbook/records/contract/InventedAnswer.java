package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;

/** Replaces in an answer what differs from run to run by what an example shows. */
final class InventedAnswer {
    private static final String INSTANT = "2025-12-01T20:11:04Z";
    private static final String DATE = "2025-12-01";
    private static final String REQUEST_ID = "4f1c09a7d2be";
    private static final String LETTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";

    private final Map<String, String> realByShown;
    private final Map<String, String> shownByReal = new HashMap<>();
    private final Random fixed;

    InventedAnswer(Map<String, String> realByShown, String stem) {
        this.realByShown = realByShown;
        this.fixed = new Random(stem.hashCode());
        realByShown.forEach((shown, real) -> shownByReal.put(real, shown));
    }

    JsonNode of(JsonNode real) {
        return of("", real);
    }

    private JsonNode of(String name, JsonNode real) {
        if (real instanceof ObjectNode object) {
            ObjectNode shown = JsonNodeFactory.instance.objectNode();
            object.fields().forEachRemaining(entry -> shown.set(entry.getKey(), of(entry.getKey(), entry.getValue())));
            return shown;
        }
        if (real instanceof ArrayNode array) {
            ArrayNode shown = JsonNodeFactory.instance.arrayNode();
            array.forEach(entry -> shown.add(of(name, entry)));
            return shown;
        }
        return real.isTextual() ? JsonNodeFactory.instance.textNode(text(name, real.asText())) : real;
    }

    private String text(String name, String real) {
        if (name.equals("requestId")) {
            return REQUEST_ID;
        }
        if (shownByReal.containsKey(real)) {
            return shownByReal.get(real);
        }
        if (ShownAndReal.isToBeInvented(real)) {
            return real.contains("T") ? INSTANT : DATE;
        }
        if (ShownAndReal.isKeyId(name, real)) {
            return known(real);
        }
        return ShownAndReal.madeUp().matcher(real).replaceAll(found -> Matcher.quoteReplacement(known(found.group())));
    }

    private String known(String real) {
        String shown = shownByReal.get(real);
        if (shown == null) {
            shown = invented(real);
            shownByReal.put(real, shown);
            realByShown.put(shown, real);
        }
        return shown;
    }

    private String invented(String real) {
        if (real.startsWith("pb_")) {
            // a key begins with its id
            return "pb_" + known(real.substring(3, 11)) + "_" + letters(43);
        }
        return real.contains("-") && real.length() == 36
                ? "0198f3c2-5b1e-7%03x-9%03x-%012x"
                        .formatted(fixed.nextInt(4096), fixed.nextInt(4096), fixed.nextLong() >>> 16)
                : letters(real.length());
    }

    private String letters(int count) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append(LETTERS.charAt(fixed.nextInt(LETTERS.length())));
        }
        return text.toString();
    }
}
