package org.pailbook.records.upload;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.wire.StrictJson;

/**
 * What a person said the columns of a file mean.
 *
 * @param kind of record, as in the API's paths
 * @param columns name of our column for each of the file's, in their order; empty text for one that is left out
 * @param units of our columns that may be in several
 * @param decimalComma how numbers are written; empty if it makes no difference
 * @param dates how days are written; empty if it makes no difference
 * @param scheme of the animals' ids, where no column has it; empty text for none
 * @param source kept with every record, where no column has it; empty text for none
 * @param hasHeader whether the first line is a heading
 */
public record FileMapping(
        String kind,
        List<String> columns,
        Map<String, FileUnit> units,
        Optional<Boolean> decimalComma,
        Optional<FileDates> dates,
        String scheme,
        String source,
        boolean hasHeader) {

    /** As it is kept for the next file with these headings, whatever their order then. */
    String toJson(List<String> headings) {
        ObjectNode json = JsonNodeFactory.instance.objectNode().put("kind", kind);
        ObjectNode byName = json.putObject("columns");
        for (int i = 0; i < columns.size(); i++) {
            byName.put(headings.get(i), columns.get(i));
        }
        ObjectNode unitNames = json.putObject("units");
        units.forEach((column, unit) -> unitNames.put(column, unit.wireName()));
        decimalComma.ifPresent(comma -> json.put("decimalComma", comma));
        dates.ifPresent(way -> json.put("dates", way.wireName()));
        return json.put("scheme", scheme)
                .put("source", source)
                .put("hasHeader", hasHeader)
                .toString();
    }

    /** The same of a file whose first line is a heading. */
    FileMapping withHeading() {
        return new FileMapping(kind, columns, units, decimalComma, dates, scheme, source, true);
    }

    static FileMapping ofJson(String text, List<String> headings) {
        JsonNode json = StrictJson.kept(text);
        List<String> columns = new ArrayList<>();
        headings.forEach(
                heading -> columns.add(json.path("columns").path(heading).asText("")));
        Map<String, FileUnit> units = new HashMap<>();
        json.path("units")
                .properties()
                .forEach(unit ->
                        FileUnit.of(unit.getValue().asText()).ifPresent(known -> units.put(unit.getKey(), known)));
        return new FileMapping(
                json.path("kind").asText(),
                columns,
                units,
                json.has("decimalComma") ? Optional.of(json.get("decimalComma").asBoolean()) : Optional.empty(),
                FileDates.of(json.path("dates").asText()),
                json.path("scheme").asText(""),
                json.path("source").asText(""),
                json.path("hasHeader").asBoolean(true));
    }

    /** Place of the file's column that is this one of ours; -1 if none is. */
    public int placeOf(String column) {
        return columns.indexOf(column);
    }
}
