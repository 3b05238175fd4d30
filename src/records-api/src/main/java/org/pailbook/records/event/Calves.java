package org.pailbook.records.event;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.intake.Column;
import org.pailbook.records.wire.Fields;

/** The calves of a calving: kept as one text with their record, since nothing is ever asked of a calf alone. */
final class Calves {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final List<String> SEXES = List.of("female", "male", "unknown");
    private static final List<String> STATUSES = List.of("alive", "stillborn", "aborted", "died");
    /** A table has columns for as many. */
    private static final int MOST = 3;

    private static final int LONGEST_IDENTIFIER = 200;

    private Calves() {}

    /** A calf on the wire. */
    @Schema(name = "Calf", description = "A calf; absent means not recorded")
    record CalfBody(
            @Schema(enumeration = {"female", "male", "unknown"})
            String sex,

            @Schema(enumeration = {"alive", "stillborn", "aborted", "died"})
            String status,

            @Schema(description = "kg at birth") Double weightKg,

            @Schema(description = "How the calf is known, in the words you use")
            String identifier) {}

    static List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < MOST; i++) {
            String name = "calf_" + (i + 1) + "_";
            String place = Integer.toString(i);
            columns.add(Column.text(name + "sex", "calves", place, "sex"));
            columns.add(Column.text(name + "status", "calves", place, "status"));
            columns.add(Column.number(name + "weight_kg", "calves", place, "weightKg"));
            columns.add(Column.text(name + "identifier", "calves", place, "identifier"));
        }
        return columns;
    }

    /** The member {@code calves} as text to keep; null if there is none. */
    static String read(Fields fields) {
        ArrayNode calves = JsonNodeFactory.instance.arrayNode();
        for (Fields posted : fields.objects("calves", MOST)) {
            ObjectNode calf = calves.addObject();
            put(calf, "sex", posted.code("sex", SEXES));
            put(calf, "status", posted.code("status", STATUSES));
            Double weightKg = posted.measure("weightKg");
            if (weightKg != null) {
                calf.put("weightKg", weightKg);
            }
            put(calf, "identifier", posted.text("identifier", LONGEST_IDENTIFIER));
            posted.finish();
        }
        return calves.isEmpty() ? null : calves.toString();
    }

    private static void put(ObjectNode calf, String member, String value) {
        if (value != null) {
            calf.put(member, value);
        }
    }

    static void write(String kept, ObjectNode content) {
        if (kept != null) {
            try {
                content.set("calves", JSON.readTree(kept));
            } catch (JsonProcessingException broken) {
                throw new IllegalStateException("kept calves are no JSON", broken);
            }
        }
    }

    /** As they are shown; null if none is recorded. */
    static List<CalfBody> view(String kept) {
        if (kept == null) {
            return null;
        }
        try {
            return List.of(JSON.readValue(kept, CalfBody[].class));
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("kept calves are no JSON", broken);
        }
    }
}
