package org.pailbook.records.setting;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.testday.BreedGroup;
import org.pailbook.lactation.testday.ValueLimit;
import org.pailbook.lactation.testday.ValueLimits;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.store.SettingRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** The usual ranges a farm moves outwards, so that it is warned less often: kept as one text with their set. */
final class WarningLimits {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String MEMBER = "warningLimits";
    /** A table has columns for as many. */
    private static final int MOST = 10;

    private WarningLimits() {}

    /** One of them on the wire. */
    @Schema(
            name = "WarningLimit",
            description =
                    "A usual range, moved outwards. Values that cannot be right are refused, and values outside what is accepted take"
                            + " no part in figures, whatever is set here",
            requiredProperties = {"field"})
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record WarningLimitBody(
            @Schema(
                    description = "As named in the table of limits; a refusal of another name lists them",
                    examples = "milkChangePct")
            String field,

            @Schema(description = "Lowest value without a warning; as usual if left out")
            Double least,

            @Schema(description = "Highest value without a warning; as usual if left out")
            Double most) {}

    static List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < MOST; i++) {
            String name = "warning_limit_" + (i + 1) + "_";
            String place = Integer.toString(i);
            columns.add(Column.text(name + "field", MEMBER, place, "field"));
            columns.add(Column.number(name + "least", MEMBER, place, "least"));
            columns.add(Column.number(name + "most", MEMBER, place, "most"));
        }
        return columns;
    }

    /** The member as text to keep; null if there is none. */
    static String read(Fields fields) {
        ArrayNode limits = JsonNodeFactory.instance.arrayNode();
        for (Fields posted : fields.objects(MEMBER, MOST)) {
            ObjectNode limit = limits.addObject();
            posted.require("field");
            limit.put("field", posted.code("field", ValueLimits.PUBLISHED.usualFields()));
            put(limit, "least", posted.number("least"));
            put(limit, "most", posted.number("most"));
            posted.finish();
        }
        return limits.isEmpty() ? null : limits.toString();
    }

    private static void put(ObjectNode limit, String member, Double value) {
        if (value != null) {
            limit.put(member, value);
        }
    }

    /** Notes limits that are no wider than the usual ones, or wider than may be, or named twice. */
    static void check(Posted<SettingRow> posted) {
        List<WarningLimitBody> limits = view(posted.record().warningLimits);
        if (limits == null) {
            return;
        }
        Set<String> fields = new HashSet<>();
        for (int i = 0; i < limits.size(); i++) {
            WarningLimitBody limit = limits.get(i);
            String pointer = posted.pointer(MEMBER) + "/" + i;
            if (limit.least() == null && limit.most() == null) {
                posted.add(FindingView.error("no-setting", pointer, "sets nothing"));
            } else if (!fields.add(limit.field())) {
                posted.add(FindingView.error("named-twice", pointer + "/field", "is named twice")
                        .seen(limit.field()));
            } else if (!ValueLimits.PUBLISHED.mayBeWidened(limit.field(), end(limit.least()), end(limit.most()))) {
                posted.add(FindingView.error(
                                "limit-not-wider", pointer, "must be wider than usual, and no wider than may be")
                        .seen(shown(limit))
                        .expecting(room(limit.field())));
            }
        }
    }

    private static OptionalDouble end(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static String shown(WarningLimitBody limit) {
        return (limit.least() == null ? "" : "least " + limit.least() + " ")
                + (limit.most() == null ? "" : "most " + limit.most());
    }

    private static String room(String field) {
        String usual = ValueLimits.PUBLISHED
                .of(field, ValueLimit.Layer.USUAL, BreedGroup.UNKNOWN)
                .orElseThrow()
                .words();
        return "around " + usual
                + ValueLimits.PUBLISHED
                        .furthest(field)
                        .map(limit -> ", within " + limit.words())
                        .orElse("");
    }

    static void write(String kept, ObjectNode content) {
        if (kept != null) {
            content.set(MEMBER, JSON.valueToTree(view(kept)));
        }
    }

    /** As they are shown; null if none is set. */
    static List<WarningLimitBody> view(String kept) {
        if (kept == null) {
            return null;
        }
        try {
            return List.of(JSON.readValue(kept, WarningLimitBody[].class));
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("kept limits are no JSON", broken);
        }
    }
}
