package org.pailbook.records.app;

import java.util.List;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
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
    private static final String MERGE_PATCH = "application/merge-patch+json";

    private VersionDescription() {}

    static void describe(OpenAPI api, String path, PathItem.HttpMethod method, Operation operation) {
        String list = path.replaceFirst("/\\{[^/]+}(/history)?$", "");
        if (path.endsWith("/history")) {
            String record = ApiDescription.recordName(api, list);
            operation
                    .operationId("get" + record + "History")
                    .summary("Every version of " + one(record) + ", first to last");
        } else if (api.getPaths().getPathItem(path).getPUT() != null) {
            describeOne(api, ApiDescription.recordName(api, list), method, operation);
        } else if (method == PathItem.HttpMethod.GET && takesClocks(operation)) {
            describeReading(operation, "ETag of the answer you have: 304 if it would be the same");
        }
    }

    /** Whether the answer is computed for a day, as known at an instant, and is one of JSON. */
    private static boolean takesClocks(Operation operation) {
        List<String> names = operation.getParameters() == null
                ? List.of()
                : operation.getParameters().stream().map(Parameter::getName).toList();
        // lists and tables of a kind take both too: they are read, not computed
        return names.contains("asOf")
                && names.contains("knownAt")
                && names.contains("herd")
                && !names.contains("cursor")
                && !names.contains("kind");
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
                                        "What it holds belongs to other records or is taken, or a request with this idempotency key still runs")
                                .content(ApiBulk.content(ApiRefusals.MEDIA_TYPE, "Problem")));
    }

    private static void describeOne(OpenAPI api, String record, PathItem.HttpMethod method, Operation operation) {
        switch (method) {
            case GET -> describeReading(operation, "ETag of the version you have: 304 if it is in force");
            case PUT -> {
                describeChange(operation, "replace" + record, "Put another content in the place of " + one(record));
                takeBody(
                        operation, "application/json", OASFactory.createSchema().ref(record));
            }
            case PATCH -> {
                describeChange(operation, "patch" + record, "Change the members named; null clears one (RFC 7396)");
                takeBody(operation, MERGE_PATCH, OASFactory.createSchema().ref(ApiPatch.of(api, record)));
            }
            case DELETE ->
                describeChange(
                        operation,
                        "withdraw" + record,
                        "Take out of force; the history stays, and posting the same key again revives it");
            default -> {
                // nothing is posted to a known record
            }
        }
    }

    private static void describeChange(Operation operation, String id, String summary) {
        operation.operationId(id).summary(summary);
        addParameter(operation, "If-Match", true, "ETag of the version you saw, or * for whichever is in force");
        addTag(operation.getResponses().getAPIResponse("200"));
        APIResponse otherVersion = OASFactory.createAPIResponse()
                .description("The record has another version by now; ETag names it")
                .content(ApiBulk.content(ApiRefusals.MEDIA_TYPE, "Problem"));
        addTag(otherVersion);
        operation.getResponses().addAPIResponse("412", otherVersion);
    }

    static void takeBody(Operation operation, String mediaType, Schema schema) {
        operation.setRequestBody(OASFactory.createRequestBody()
                .required(true)
                .content(OASFactory.createContent()
                        .addMediaType(mediaType, OASFactory.createMediaType().schema(schema))));
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
                            .description("Version of the record in double quotes")
                            .schema(OASFactory.createSchema().addType(Schema.SchemaType.STRING)));
        }
    }

    private static String one(String record) {
        String words = record.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(java.util.Locale.ROOT);
        return ("aeiou".indexOf(words.charAt(0)) >= 0 ? "an " : "a ") + words;
    }
}
