package org.pailbook.records.app;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;

/**
 * Describes what every kind of record answers for one known record: names of the operations from the path, bodies, entity tags and the
 * refusals that come with them. The methods themselves stand once, in the exchange.
 */
final class VersionDescription {
    private static final String PROBLEM = "application/problem+json";
    private static final String MERGE_PATCH = "application/merge-patch+json";

    private static final Map<String, String> REFUSALS = new TreeMap<>(Map.of(
            "409", "Its keys belong to another record",
            "412", "The record has another version by now; ETag names it",
            "413", "The body is too large",
            "415", "The body has a media type that is not read here",
            "422", "Read, but not acceptable; errors tell each fault and its place",
            "428", "If-Match is missing"));

    private VersionDescription() {}

    /** @param item whose methods tell whether the path names one record that can be changed */
    static void describe(String path, PathItem item, PathItem.HttpMethod method, Operation operation) {
        String[] parts = path.split("/");
        String last = parts[parts.length - 1];
        if (last.equals("history")) {
            String record = ApiDescription.schemaOf(parts[parts.length - 3]);
            operation
                    .operationId("get" + record + "History")
                    .summary("Every version of " + one(record) + ", first to last");
        } else if (item.getPUT() != null) {
            describeOne(parts[parts.length - 2], method, operation);
        } else if (method == PathItem.HttpMethod.GET && takesClocks(operation)) {
            describeReading(operation, "ETag of the answer you have: 304 if it would be the same");
        }
    }

    /** Whether the answer is computed for a day, as known at an instant, and is one of JSON. */
    private static boolean takesClocks(Operation operation) {
        List<String> names = operation.getParameters() == null
                ? List.of()
                : operation.getParameters().stream().map(Parameter::getName).toList();
        // lists take both too, with a place to go on from: they are read, not computed
        return names.contains("asOf")
                && names.contains("knownAt")
                && names.contains("herd")
                && !names.contains("cursor");
    }

    private static void describeReading(Operation operation, String description) {
        addParameter(operation, "If-None-Match", false, description);
        addTag(operation.getResponses().getAPIResponse("200"));
        operation
                .getResponses()
                .addAPIResponse("304", OASFactory.createAPIResponse().description("You have it already"));
    }

    /** For an operation that takes records. */
    static void describeOnceOnly(Operation operation) {
        operation.addParameter(OASFactory.createParameter()
                .name("Idempotency-Key")
                .in(Parameter.In.HEADER)
                .description(
                        "8 to 64 printable characters of your choice: sent again within 24 hours, the first answer comes again"
                                + " with Idempotency-Replayed: true")
                .schema(OASFactory.createSchema()
                        .addType(Schema.SchemaType.STRING)
                        .minLength(8)
                        .maxLength(64)));
        operation
                .getResponses()
                .addAPIResponse(
                        "409",
                        OASFactory.createAPIResponse()
                                .description(
                                        "Its keys belong to different records, or a request with this idempotency key still runs")
                                .content(ApiDescription.content(PROBLEM, "Problem")));
    }

    private static void describeOne(String kind, PathItem.HttpMethod method, Operation operation) {
        switch (method) {
            case GET -> describeReading(operation, "ETag of the version you have: 304 if it is in force");
            case PUT ->
                describeChange(
                        operation,
                        "replace" + ApiDescription.schemaOf(kind),
                        "Put another content in the place of " + one(ApiDescription.schemaOf(kind)),
                        kind,
                        "application/json");
            case PATCH ->
                describeChange(
                        operation,
                        "patch" + ApiDescription.schemaOf(kind),
                        "Change the members named; null clears one (RFC 7396)",
                        kind,
                        MERGE_PATCH);
            case DELETE ->
                describeChange(
                        operation,
                        "withdraw" + ApiDescription.schemaOf(kind),
                        "Take out of force; the history stays, and posting the same key again revives it",
                        kind,
                        null);
            default -> {
                // nothing is posted to a known record
            }
        }
    }

    private static void describeChange(Operation operation, String id, String summary, String kind, String mediaType) {
        operation.operationId(id).summary(summary);
        addParameter(operation, "If-Match", true, "ETag of the version you saw, or * for whichever is in force");
        addTag(operation.getResponses().getAPIResponse("200"));
        REFUSALS.forEach((status, why) -> {
            if (mediaType != null || status.equals("412") || status.equals("428")) {
                APIResponse refusal = OASFactory.createAPIResponse()
                        .description(why)
                        .content(ApiDescription.content(PROBLEM, "Problem"));
                if (status.equals("412")) {
                    addTag(refusal);
                }
                operation.getResponses().addAPIResponse(status, refusal);
            }
        });
        if (mediaType != null) {
            // a patch may hold any part of a record, and null: its schema says no more than that it is an object
            operation.setRequestBody(OASFactory.createRequestBody()
                    .required(true)
                    .content(
                            mediaType.equals(MERGE_PATCH)
                                    ? OASFactory.createContent()
                                            .addMediaType(
                                                    mediaType,
                                                    OASFactory.createMediaType()
                                                            .schema(OASFactory.createSchema()
                                                                    .addType(Schema.SchemaType.OBJECT)
                                                                    .description("Members of "
                                                                            + ApiDescription.schemaOf(kind)
                                                                            + "; null clears one")))
                                    : ApiDescription.content(mediaType, ApiDescription.schemaOf(kind))));
        }
    }

    private static void addParameter(Operation operation, String header, boolean required, String description) {
        operation.addParameter(OASFactory.createParameter()
                .name(header)
                .in(Parameter.In.HEADER)
                .required(required)
                .description(description)
                .schema(OASFactory.createSchema()
                        .addType(Schema.SchemaType.STRING)
                        .addExample("\"1\"")));
    }

    private static void addTag(APIResponse response) {
        if (response != null) {
            response.addHeader(
                    "ETag",
                    OASFactory.createHeader()
                            .description("Names this version or answer, in double quotes")
                            .schema(OASFactory.createSchema().addType(Schema.SchemaType.STRING)));
        }
    }

    private static String one(String record) {
        String words = record.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(java.util.Locale.ROOT);
        return ("aeiou".indexOf(words.charAt(0)) >= 0 ? "an " : "a ") + words;
    }
}
