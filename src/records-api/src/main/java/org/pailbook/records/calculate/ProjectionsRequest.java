package org.pailbook.records.calculate;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.StrictJson;

/**
 * Which lactations to project, and what to learn from first. Read one lactation after the other, so that a body of the largest size needs no tree of
 * all of it.
 *
 * @param asOf later tests take no part; empty for all
 */
record ProjectionsRequest(
        Optional<LocalDate> asOf, List<PostedHerdLactation> history, List<PostedHerdLactation> lactations) {

    /** Most lactations of either kind; each that teaches takes some kilobytes. Ours. */
    static final int MOST_LACTATIONS = 20_000;

    private static final int MOST_FAULTS = 100;

    /** The members as they stand in the description of the API; the class reads them itself. */
    @Schema(
            name = "ProjectionsRequest",
            description = "Lactations to project, and other lactations of the herd to learn from",
            requiredProperties = "lactations",
            examples =
                    "{\"asOf\":\"2002-06-30\",\"history\":[{\"id\":\"h1\",\"animal\":\"a7\",\"parity\":2,\"breed\":\"HOL\","
                            + "\"calvingDate\":\"2001-01-10\",\"testDays\":[{\"date\":\"2001-01-30\",\"milkKg\":31.2,\"fatPct\":4.1,"
                            + "\"proteinPct\":3.3,\"sccThousandPerMl\":85}]}],\"lactations\":[{\"id\":\"p1\",\"animal\":\"b3\",\"parity\":1,"
                            + "\"breed\":\"JER\",\"calvingDate\":\"2002-03-01\",\"testDays\":[]}]}")
    record Members(
            @Schema(
                    description =
                            "Later test days take no part and are counted in a finding; all take part if left out")
            LocalDate asOf,

            @Schema(
                    description =
                            "Earlier and other lactations of the herd, finished or not; of a cow's own only earlier ones take part in her projection, and a finding says so",
                    maxItems = MOST_LACTATIONS)
            List<LactationMembers> history,

            @Schema(description = "To be projected, answered in this order", maxItems = MOST_LACTATIONS)
            List<LactationMembers> lactations) {}

    /** One lactation in the description of the API. */
    @Schema(
            name = "HerdLactation",
            description = "One lactation of a cow of the herd",
            requiredProperties = {"calvingDate", "testDays"})
    record LactationMembers(
            @Schema(description = "The caller's own; required in lactations, and answered as sent", maxLength = 100)
            String id,

            @Schema(description = "Tells cows apart; left out, she is a cow of her own", maxLength = 100)
            String animal,

            @Schema(description = "1 if left out, with a finding", minimum = "1", maximum = "99")
            Integer parity,

            @Schema(description = "ICAR breed code or any text; an unknown one uses the general reference and says so")
            String breed,

            @Schema(description = "Day 0") LocalDate calvingDate,

            @Schema(description = "Last day she was milked in it")
            LocalDate endDate,

            @Schema(maxItems = PostedLactation.MOST_TEST_DAYS)
            List<PostedTestDay> testDays) {}

    static ProjectionsRequest read(InputStream body) {
        try (JsonParser parser = StrictJson.parser(body)) {
            return new Reading(parser).all();
        } catch (IOException unreadable) {
            throw StrictJson.unreadable(unreadable);
        }
    }

    /** @throws Problem with the faults noted, if there is one */
    static void refuseIfWrong(List<FindingView> faults) {
        if (!faults.isEmpty()) {
            throw Problem.validation(
                    faults.stream().limit(MOST_FAULTS).map(FindingView::asFault).toList());
        }
    }

    private static final class Reading {
        private final JsonParser parser;
        private final List<FindingView> faults = new ArrayList<>();
        private final List<PostedHerdLactation> history = new ArrayList<>();
        private final List<PostedHerdLactation> lactations = new ArrayList<>();
        private Optional<LocalDate> asOf = Optional.empty();
        private boolean hasLactations;

        Reading(JsonParser parser) {
            this.parser = parser;
        }

        ProjectionsRequest all() throws IOException {
            if (parser.nextToken() == null) {
                throw new Problem(ProblemCode.EMPTY_BODY, "Send one JSON object.");
            }
            if (parser.currentToken() != JsonToken.START_OBJECT) {
                StrictJson.requireObject(StrictJson.value(parser), "");
            }
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String name = parser.currentName();
                parser.nextToken();
                member(name);
            }
            if (parser.nextToken() != null) {
                throw new Problem(ProblemCode.MALFORMED_JSON, "There is more text after the JSON value.");
            }
            if (!hasLactations) {
                faults.add(FindingView.error("required", "/lactations", "is required"));
            }
            refuseIfWrong(faults);
            return new ProjectionsRequest(asOf, List.copyOf(history), List.copyOf(lactations));
        }

        private void member(String name) throws IOException {
            boolean isToProject = name.equals("lactations");
            hasLactations |= isToProject;
            if ((isToProject || name.equals("history")) && parser.currentToken() == JsonToken.START_ARRAY) {
                entries("/" + name, isToProject ? lactations : history, isToProject);
                return;
            }
            // all else is small, or wrong; judged by the rules for every posted object
            ObjectNode one = JsonNodeFactory.instance.objectNode();
            one.set(name, StrictJson.value(parser));
            Fields fields = new Fields(one, "");
            LocalDate day = fields.date("asOf");
            asOf = day == null ? asOf : Optional.of(day);
            fields.objects("history", 0);
            fields.objects("lactations", 0);
            fields.finish();
            note(fields.findings());
        }

        private void entries(String at, List<PostedHerdLactation> into, boolean isIdRequired) throws IOException {
            for (int index = 0; parser.nextToken() != JsonToken.END_ARRAY; index++) {
                if (index == MOST_LACTATIONS) {
                    throw new Problem(ProblemCode.TOO_LARGE, at + " has more than " + MOST_LACTATIONS + " lactations.");
                }
                String place = at + "/" + index;
                JsonNode node = StrictJson.value(parser);
                if (node instanceof ObjectNode object) {
                    List<FindingView> wrong = new ArrayList<>();
                    PostedHerdLactation.read(object, place, isIdRequired, wrong).ifPresent(into::add);
                    note(wrong);
                } else {
                    note(List.of(FindingView.error("not-an-object", place, "must be an object")
                            .seen(node.toString())));
                }
            }
        }

        private void note(List<FindingView> wrong) {
            faults.addAll(wrong);
            if (faults.size() >= MOST_FAULTS) {
                refuseIfWrong(faults);
            }
        }
    }
}
