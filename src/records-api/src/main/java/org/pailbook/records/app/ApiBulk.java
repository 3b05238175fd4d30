package org.pailbook.records.app;

import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.Schema;

/** Describes the addresses that take many records at once: four forms of the body, one answer. */
final class ApiBulk {
    static final String ENDING = "/bulk";

    private ApiBulk() {}

    static void describe(OpenAPI api, String path, Operation operation) {
        String listPath = path.substring(0, path.length() - ENDING.length());
        Schema rows = OASFactory.createSchema()
                .addType(Schema.SchemaType.OBJECT)
                .addRequired("rows")
                .addProperty(
                        "rows",
                        OASFactory.createSchema()
                                .addType(Schema.SchemaType.ARRAY)
                                .items(OASFactory.createSchema().ref(ApiDescription.recordName(api, listPath))));
        Schema text = OASFactory.createSchema().addType(Schema.SchemaType.STRING);
        operation.setRequestBody(OASFactory.createRequestBody()
                .required(true)
                .description(
                        "At most 32 MiB and 200,000 rows. JSON: rows, or a bare array. NDJSON: one record a line. CSV: a header"
                                + " with our column names in any order, comma or semicolon")
                .content(OASFactory.createContent()
                        .addMediaType(
                                "application/json", OASFactory.createMediaType().schema(rows))
                        .addMediaType(
                                "application/x-ndjson",
                                OASFactory.createMediaType().schema(text))
                        .addMediaType("text/csv", OASFactory.createMediaType().schema(text))
                        .addMediaType(
                                "multipart/form-data",
                                OASFactory.createMediaType()
                                        .schema(OASFactory.createSchema().ref("BulkFile")))));
        operation
                .getResponses()
                .addAPIResponse(
                        "200",
                        OASFactory.createAPIResponse()
                                .description("Counts and row results, also if every row was refused")
                                .content(content("application/json", "BulkAnswer")))
                .addAPIResponse(
                        "422",
                        OASFactory.createAPIResponse()
                                .description(
                                        "With atomic=true, a row has an error: problem members and the bulk answer together")
                                .content(content(ApiRefusals.MEDIA_TYPE, "RejectedBatch")));
    }

    private static Schema form() {
        return OASFactory.createSchema()
                .addType(Schema.SchemaType.OBJECT)
                .addRequired("file")
                .addProperty(
                        "file",
                        OASFactory.createSchema()
                                .addType(Schema.SchemaType.STRING)
                                .format("binary")
                                .description(
                                        "A file of one of the other forms; its own media type says which, or the end of its"
                                                + " name: .json, .ndjson, .jsonl or .csv"));
    }

    /** Scanned schemas come from annotated classes; these no method returns, since they are written as a stream. */
    static void addAnswer(OpenAPI api) {
        Schema row = object(Map.of(
                "row", integer("Number of the row, from 1"),
                "line", integer("Line of the file, where it has lines"),
                "outcome", OASFactory.createSchema().ref("Outcome"),
                "id", text("Our id of the record"),
                "version", integer("Its version"),
                "findings", listOf("Finding")));
        Map<String, Schema> answer = new TreeMap<>(Map.of(
                "received", integer("Rows read"),
                "created", integer("New records"),
                "updated", integer("Records replaced, old versions kept"),
                "unchanged", integer("Same content already there; nothing written"),
                "superseded", integer("A later row of the request has the same key"),
                "refused", integer("Not stored, because of an error"),
                "rowsReported", integer("How many rows stand in rows"),
                "dryRun", OASFactory.createSchema().addType(Schema.SchemaType.BOOLEAN),
                "atomic", OASFactory.createSchema().addType(Schema.SchemaType.BOOLEAN),
                "rows", listOf("RowAnswer")));
        Map<String, Schema> rejected = new TreeMap<>(answer);
        rejected.putAll(api.getComponents().getSchemas().get("Problem").getProperties());
        api.getComponents()
                .addSchema("BulkFile", form())
                .addSchema("RowAnswer", row)
                .addSchema("BulkAnswer", object(answer))
                .addSchema("RejectedBatch", object(rejected));
    }

    private static Schema object(Map<String, Schema> properties) {
        return OASFactory.createSchema().addType(Schema.SchemaType.OBJECT).properties(new TreeMap<>(properties));
    }

    private static Schema listOf(String schema) {
        return OASFactory.createSchema()
                .addType(Schema.SchemaType.ARRAY)
                .items(OASFactory.createSchema().ref(schema));
    }

    private static Schema integer(String description) {
        return OASFactory.createSchema().addType(Schema.SchemaType.INTEGER).description(description);
    }

    private static Schema text(String description) {
        return OASFactory.createSchema().addType(Schema.SchemaType.STRING).description(description);
    }

    static Content content(String mediaType, String schema) {
        return OASFactory.createContent()
                .addMediaType(
                        mediaType,
                        OASFactory.createMediaType()
                                .schema(OASFactory.createSchema().ref(schema)));
    }
}
