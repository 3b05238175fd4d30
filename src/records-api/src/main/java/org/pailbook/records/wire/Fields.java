package org.pailbook.records.wire;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.text.Normalizer;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.pailbook.records.problem.Problem;

/**
 * The members of one posted object. Every reading method returns null where the member is absent or wrong; what is wrong is
 * noted as a finding with its place, so that one answer tells all faults. {@link #finish()} notes members nobody asked for.
 */
public final class Fields {
    private static final int LONGEST_TEXT_BYTES = 4096;
    private static final int MOST_SIGNIFICANT_DIGITS = 12;

    private final ObjectNode object;
    private final String at;
    private final List<FindingView> findings;
    private final Set<String> asked = new LinkedHashSet<>();

    /**
     * @param object the posted object
     * @param at its pointer in the body, empty for the body itself
     */
    public Fields(ObjectNode object, String at) {
        this(object, at, new ArrayList<>());
    }

    private Fields(ObjectNode object, String at, List<FindingView> findings) {
        this.object = object;
        this.at = at;
        this.findings = findings;
    }

    /** Everything wrong so far. */
    public List<FindingView> findings() {
        return findings;
    }

    public String pointer(String name) {
        return at + "/" + name.replace("~", "~0").replace("/", "~1");
    }

    /** Text of at most {@code longest} characters: trimmed, in Unicode form NFC, no control characters. */
    public String text(String name, int longest) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        if (!node.isTextual()) {
            return wrong(name, "not-a-text", "must be a text", node);
        }
        String sent = node.textValue();
        if (isPlain(sent) && sent.length() <= longest) {
            return sent;
        }
        String text = Normalizer.normalize(sent, Normalizer.Form.NFC).strip();
        if (text.isEmpty()) {
            return wrong(name, "empty-text", "must not be empty; leave the member out if it is not known", node);
        }
        if (text.length() > longest || text.length() > LONGEST_TEXT_BYTES) {
            return wrong(name, "text-too-long", "must have at most " + longest + " characters", node);
        }
        if (text.chars().anyMatch(Character::isISOControl)) {
            return wrong(name, "control-character", "must not hold control characters", node);
        }
        if (text.codePoints().anyMatch(point -> Character.getType(point) == Character.SURROGATE)) {
            return wrong(name, "not-unicode", "must not hold half of a surrogate pair", node);
        }
        return text;
    }

    /** Whether a text is what most are, and needs no second look: printable ASCII without blanks around it. */
    private static boolean isPlain(String text) {
        int length = text.length();
        for (int i = 0; i < length; i++) {
            char letter = text.charAt(i);
            if (letter > '~' || letter < ' ') {
                return false;
            }
        }
        return length > 0 && length <= LONGEST_TEXT_BYTES && text.charAt(0) != ' ' && text.charAt(length - 1) != ' ';
    }

    public String requiredText(String name, int longest) {
        require(name);
        return text(name, longest);
    }

    /** One of the given codes, exact case. */
    public String code(String name, List<String> allowed) {
        String text = text(name, LONGEST_TEXT_BYTES);
        if (text != null && !allowed.contains(text)) {
            findings.add(
                    FindingView.error("unknown-code", pointer(name), "must be one of " + String.join(", ", allowed))
                            .seen(text));
            return null;
        }
        return text;
    }

    /** A finite number with at most twelve significant digits, so that it is kept exactly as posted. */
    public Double number(String name) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        if (!node.isNumber()) {
            return wrong(name, "not-a-number", "must be a number", node);
        }
        BigDecimal number = node.decimalValue();
        double value = number.doubleValue();
        if (!Double.isFinite(value)) {
            return wrong(name, "not-finite", "must be a finite number", node);
        }
        if (number.stripTrailingZeros().precision() > MOST_SIGNIFICANT_DIGITS || (value == 0 && number.signum() != 0)) {
            return wrong(
                    name,
                    "too-precise",
                    "must have at most 12 significant digits, so that it is stored unchanged",
                    node);
        }
        return value;
    }

    /** A finite number of any precision, 0 or more: a measured value that is computed with and not kept. */
    public Double measure(String name) {
        JsonNode node = present(name);
        return node == null ? null : measure(pointer(name), node);
    }

    /** A finite number between two bounds, both allowed, of any precision. */
    public Double measure(String name, double least, double most) {
        Double value = measure(name);
        if (value != null && !(value >= least && value <= most)) {
            return wrong(name, "out-of-range", "must lie from " + least + " to " + most, object.get(name));
        }
        return value;
    }

    /** Such values in an array; null if absent or no array. */
    public double[] measures(String name, int most) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        if (!(node instanceof ArrayNode array)) {
            return wrong(name, "not-an-array", "must be an array", node);
        }
        if (array.size() > most) {
            findings.add(FindingView.error("too-many", pointer(name), "must have at most " + most + " entries"));
            return null;
        }
        double[] values = new double[array.size()];
        for (int i = 0; i < values.length; i++) {
            Double value = measure(pointer(name) + "/" + i, array.get(i));
            values[i] = value == null ? 0 : value;
        }
        return values;
    }

    private Double measure(String place, JsonNode node) {
        if (!node.isNumber()) {
            return wrongAt(place, "not-a-number", "must be a number", node);
        }
        double value = node.decimalValue().doubleValue();
        if (!Double.isFinite(value)) {
            return wrongAt(place, "not-finite", "must be a finite number", node);
        }
        return value < 0 ? wrongAt(place, "out-of-range", "must not be negative", node) : (Double) value;
    }

    public Integer integer(String name, int least, int most) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        if (!node.isIntegralNumber()) {
            return wrong(name, "not-an-integer", "must be a whole number", node);
        }
        if (!node.canConvertToInt() || node.intValue() < least || node.intValue() > most) {
            return wrong(name, "out-of-range", "must lie from " + least + " to " + most, node);
        }
        return node.intValue();
    }

    /** {@code true} or {@code false}. */
    public Boolean flag(String name) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        return node.isBoolean()
                ? (Boolean) node.booleanValue()
                : wrong(name, "not-a-boolean", "must be true or false", node);
    }

    public LocalDate date(String name) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        LocalDate date = node.isTextual() ? WireDates.parse(node.textValue()).orElse(null) : null;
        return date == null ? wrong(name, "not-a-date", "must be " + WireDates.EXPECTED, node) : date;
    }

    /** An instant with its offset, kept to the millisecond. */
    public Instant instant(String name) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        Instant instant = node.isTextual() ? WireDates.instant(node.textValue()).orElse(null) : null;
        return instant == null ? wrong(name, "not-an-instant", "must be " + WireDates.EXPECTED_INSTANT, node) : instant;
    }

    public LocalDate requiredDate(String name) {
        require(name);
        return date(name);
    }

    /** The members of an object inside this one; null if absent or no object. */
    public Fields object(String name) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        return node instanceof ObjectNode inner
                ? new Fields(inner, pointer(name), findings)
                : wrong(name, "not-an-object", "must be an object", node);
    }

    /** The objects of an array inside this one; empty if absent. */
    public List<Fields> objects(String name, int most) {
        JsonNode node = present(name);
        List<Fields> inner = new ArrayList<>();
        if (node == null) {
            return inner;
        }
        if (!(node instanceof ArrayNode array)) {
            wrong(name, "not-an-array", "must be an array", node);
            return inner;
        }
        if (array.size() > most) {
            findings.add(FindingView.error("too-many", pointer(name), "must have at most " + most + " entries"));
            return inner;
        }
        for (int i = 0; i < array.size(); i++) {
            String place = pointer(name) + "/" + i;
            if (array.get(i) instanceof ObjectNode entry) {
                inner.add(new Fields(entry, place, findings));
            } else {
                findings.add(FindingView.error("not-an-object", place, "must be an object")
                        .seen(array.get(i).toString()));
            }
        }
        return inner;
    }

    /** Texts of an array, each trimmed; null if absent. */
    public List<String> texts(String name, int most, int longest) {
        JsonNode node = present(name);
        if (node == null) {
            return null;
        }
        if (!(node instanceof ArrayNode array) || array.size() > most) {
            return wrong(name, "not-an-array", "must be an array of at most " + most + " texts", node);
        }
        List<String> texts = new ArrayList<>();
        for (JsonNode entry : array) {
            if (!entry.isTextual()
                    || entry.textValue().isBlank()
                    || entry.textValue().length() > longest) {
                return wrong(name, "not-a-text", "must hold texts of 1 to " + longest + " characters", entry);
            }
            texts.add(entry.textValue().strip());
        }
        return texts;
    }

    /** Whether the member was sent, whatever it holds. */
    public boolean has(String name) {
        asked.add(name);
        return object.has(name);
    }

    /** Notes that the member is missing, if it is. */
    public void require(String name) {
        if (!object.has(name)) {
            asked.add(name);
            findings.add(FindingView.error("required", pointer(name), "is required"));
        }
    }

    /** Notes every member that was never asked for, with the nearest known name. */
    public void finish() {
        finish(Set.of());
    }

    /** The same for an object that named these members too, only to clear them. */
    public void finish(Set<String> cleared) {
        cleared.forEach(this::noteUnlessAsked);
        object.fieldNames().forEachRemaining(name -> {
            if (!cleared.contains(name)) {
                noteUnlessAsked(name);
            }
        });
    }

    private void noteUnlessAsked(String name) {
        if (!asked.contains(name)) {
            String nearest = NearestName.to(name, asked);
            findings.add(FindingView.error(
                    "unknown-field",
                    pointer(name),
                    nearest == null
                            ? "unknown; known here: " + String.join(", ", asked)
                            : "unknown; did you mean " + nearest + "?"));
        }
    }

    /** @throws Problem with every fault noted, if there is one */
    public void refuseIfWrong() {
        if (!findings.isEmpty()) {
            throw Problem.validation(findings.stream().map(FindingView::asFault).toList());
        }
    }

    private JsonNode present(String name) {
        asked.add(name);
        JsonNode node = object.get(name);
        if (node == null) {
            return null;
        }
        if (node.isNull()) {
            return wrong(name, "null-value", "must not be null; leave the member out if it is not known", node);
        }
        return node;
    }

    private <T> T wrong(String name, String code, String message, JsonNode seen) {
        return wrongAt(pointer(name), code, message, seen);
    }

    private <T> T wrongAt(String place, String code, String message, JsonNode seen) {
        FindingView finding = FindingView.error(code, place, message + ", was " + shown(seen));
        findings.add(finding.seen(seen.isTextual() ? seen.textValue() : seen.toString()));
        return null;
    }

    private static String shown(JsonNode seen) {
        return org.pailbook.records.problem.Fault.shorten(seen.toString());
    }
}
