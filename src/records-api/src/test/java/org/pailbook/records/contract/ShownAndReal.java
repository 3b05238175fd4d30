package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Ids and times as an example shows them, and what they are in this run. What the service makes up itself (ids, keys, places in lists) may
 * differ from what is shown, but the same shown id must be the same real one everywhere; times may differ if the real one is of this run.
 */
final class ShownAndReal {
    private static final Pattern MADE_UP = Pattern.compile(
            "[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}|pb_[0-9A-Za-z]{8}_[0-9A-Za-z]{43}"
                    + "|(?<=cursor=)[^&\"]+|(?<![\\w-])[\\w-]{43}(?![\\w-])");
    private static final Pattern KEY_ID = Pattern.compile("[0-9A-Za-z]{8}");
    private static final Pattern INSTANT = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z");
    private static final Pattern DATE = Pattern.compile("\\d{4}-\\d\\d-\\d\\d");
    private static final String PLACEHOLDER = "<made up>";

    private final Map<String, String> realByShown = new HashMap<>();

    /** The text with every shown id replaced by the real one. */
    String real(String shown) {
        String text = shown;
        for (Map.Entry<String, String> pair : realByShown.entrySet()) {
            text = text.replace(pair.getKey(), pair.getValue());
        }
        return text;
    }

    void learn(String shown, String real) {
        realByShown.put(shown, real);
    }

    /** What differs, each with its place; empty if the shown answer is the real one apart from ids and times. */
    List<String> differences(JsonNode shown, JsonNode real, List<String> shortened) {
        List<String> differences = new ArrayList<>();
        compare("", shown, real, shortened, differences);
        return differences;
    }

    private void compare(String at, JsonNode shown, JsonNode real, List<String> shortened, List<String> differences) {
        if (shown.isObject() && real.isObject()) {
            TreeSet<String> names = new TreeSet<>();
            shown.fieldNames().forEachRemaining(names::add);
            real.fieldNames().forEachRemaining(names::add);
            for (String name : names) {
                if (!shown.has(name) || !real.has(name)) {
                    differences.add(at + "/" + name + (shown.has(name) ? " is shown only" : " is not shown"));
                } else if (!name.equals("requestId")) {
                    compare(at + "/" + name, shown.get(name), real.get(name), shortened, differences);
                }
            }
        } else if (shown.isArray() && real.isArray() && shortened.contains(at)) {
            compareShortened(at, shown, real, differences);
        } else if (shown.isArray() && real.isArray() && shown.size() == real.size()) {
            for (int i = 0; i < shown.size(); i++) {
                compare(at + "/" + i, shown.get(i), real.get(i), shortened, differences);
            }
        } else if (shown.isTextual() && real.isTextual()) {
            if (!isSame(at, shown.asText(), real.asText())) {
                differences.add(at + " shows " + shown + ", is " + real);
            }
        } else if (!(shown.isNumber() && real.isNumber() && shown.doubleValue() == real.doubleValue())
                && !shown.equals(real)) {
            differences.add(at + " shows " + shown + ", is " + real);
        }
    }

    private void compareShortened(String at, JsonNode shown, JsonNode real, List<String> differences) {
        Iterator<JsonNode> rest = real.iterator();
        for (JsonNode entry : shown) {
            boolean found = false;
            while (!found && rest.hasNext()) {
                found = differences(entry, rest.next(), List.of()).isEmpty();
            }
            if (!found) {
                differences.add(at + " has no such entry, or not in that order: " + entry);
            }
        }
    }

    private boolean isSame(String at, String shown, String real) {
        if (shown.equals(real)
                || real.equals(realByShown.get(shown))
                || (isMoment(shown) && isMoment(real) && isOfThisRun(real))) {
            return true;
        }
        Matcher ofShown = MADE_UP.matcher(shown);
        Matcher ofReal = MADE_UP.matcher(real);
        if (at.endsWith("/id")
                && KEY_ID.matcher(shown).matches()
                && KEY_ID.matcher(real).matches()) {
            return isKnownAs(shown, real);
        }
        if (!ofShown.replaceAll(PLACEHOLDER).equals(ofReal.replaceAll(PLACEHOLDER))) {
            return false;
        }
        ofShown.reset();
        ofReal.reset();
        while (ofShown.find() && ofReal.find()) {
            if (!isKnownAs(ofShown.group(), ofReal.group())) {
                return false;
            }
        }
        return true;
    }

    private boolean isKnownAs(String shown, String real) {
        String known = realByShown.putIfAbsent(shown, real);
        return known == null || known.equals(real);
    }

    private static boolean isMoment(String text) {
        return INSTANT.matcher(text).matches() || DATE.matcher(text).matches();
    }

    private static boolean isOfThisRun(String moment) {
        if (DATE.matcher(moment).matches()) {
            LocalDate today = LocalDate.now(ZoneOffset.UTC);
            return Math.abs(LocalDate.parse(moment).toEpochDay() - today.toEpochDay()) <= 1;
        }
        return Duration.between(Instant.parse(moment), Instant.now()).abs().compareTo(Duration.ofDays(1)) < 0;
    }

    /** The real answer with invented ids and times, the same in every run, to be shown. */
    JsonNode invented(JsonNode real, String stem) {
        return new InventedAnswer(realByShown, stem).of(real);
    }

    /** Whether the text is a time of this run, which is shown as another one. */
    static boolean isToBeInvented(String text) {
        return isMoment(text) && isOfThisRun(text);
    }

    static Pattern madeUp() {
        return MADE_UP;
    }

    static boolean isKeyId(String at, String text) {
        return at.equals("id") && KEY_ID.matcher(text).matches();
    }
}
