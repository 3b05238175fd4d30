package org.pailbook.records.app;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;

/**
 * Adds to the description of the API what is the same for every operation: keys, problem answers, path parameters, the forms of bulk
 * bodies. Written once here, it would drown each method as annotations.
 */
@OpenApiFilter(OpenApiFilter.RunStage.BUILD)
public class ApiDescription implements OASFilter {
    private static final String PROBLEM = "application/problem+json";
    /** Below this nothing is stored, so nothing is created. */
    private static final String CALCULATE = "/v1/calculate/";

    private static final Map<String, String> REFUSALS = new TreeMap<>(Map.of(
            "400", "The request could not be read: malformed body, unknown or bad parameter",
            "401", "No valid key",
            "403", "The key lacks the scope",
            "404", "No such record, or out of this key's reach"));
    private static final Map<String, String> REFUSALS_OF_BODIES = new TreeMap<>(Map.of(
            "413", "The body is too large",
            "415", "The body has a media type that is not read here",
            "422", "Read, but not acceptable; errors tell each fault and its place"));
    private static final Map<String, String> PATH_PARAMETERS = Map.of(
            "herd", "Code of the herd",
            "animal", "Our id of the animal, or scheme:id with the colon as it is or percent-encoded",
            "id", "Our id",
            "parity", "Number of calvings, 1 for the first lactation");

    @Override
    public void filterOpenAPI(OpenAPI api) {
        addKeys(api);
        addBulkAnswer(api);
        for (Map.Entry<String, PathItem> path : api.getPaths().getPathItems().entrySet()) {
            boolean bulk = path.getKey().endsWith("/bulk");
            path.getValue().getOperations().forEach((method, operation) -> {
                if (!path.getKey().startsWith("/v1")) {
                    operation.setSecurity(List.of());
                    return;
                }
                boolean posts = method == PathItem.HttpMethod.POST;
                VersionDescription.describe(path.getKey(), path.getValue(), method, operation);
                describePath(operation);
                addRefusals(operation, REFUSALS);
                if (namesNoRecord(path.getKey())) {
                    operation.getResponses().removeAPIResponse("404");
                }
                if (posts) {
                    addRefusals(operation, REFUSALS_OF_BODIES);
                }
                if (isRecordPost(path.getKey(), posts)) {
                    VersionDescription.describeOnceOnly(operation);
                }
                if (posts && bulk) {
                    describeBulk(operation, path.getKey());
                } else if (posts && !path.getKey().startsWith(CALCULATE)) {
                    addCreated(operation);
                }
            });
        }
    }

    /** Herds are made and keys shown once by other means: only records of a herd are posted with an idempotency key. */
    private static boolean isRecordPost(String path, boolean posts) {
        return posts && path.startsWith("/v1/herds/{herd}/");
    }

    private static boolean namesNoRecord(String path) {
        return path.startsWith(CALCULATE) || path.equals("/v1/methods");
    }

    private static void addKeys(OpenAPI api) {
        api.getComponents()
                .addSecurityScheme(
                        "apiKey",
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.APIKEY)
                                .in(SecurityScheme.In.HEADER)
                                .name("X-API-Key"))
                .addSecurityScheme(
                        "bearer",
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer"))
                .addSecurityScheme(
                        "basic",
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("basic")
                                .description("Any user name, the key as password"));
        for (String scheme : List.of("apiKey", "bearer", "basic")) {
            api.addSecurityRequirement(OASFactory.createSecurityRequirement().addScheme(scheme));
        }
    }

    private static void describePath(Operation operation) {
        if (operation.getParameters() != null) {
            for (Parameter parameter : operation.getParameters()) {
                if (parameter.getIn() == Parameter.In.PATH && parameter.getDescription() == null) {
                    parameter.setDescription(PATH_PARAMETERS.get(parameter.getName()));
                }
            }
        }
    }

    private static void addRefusals(Operation operation, Map<String, String> refusals) {
        refusals.forEach((status, why) -> operation
                .getResponses()
                .addAPIResponse(
                        status, OASFactory.createAPIResponse().description(why).content(content(PROBLEM, "Problem"))));
    }

    private static void addCreated(Operation operation) {
        var same = operation.getResponses().getAPIResponse("200");
        var created = operation.getResponses().getAPIResponse("201");
        if (same != null && created == null) {
            same.setDescription("It was there; unchanged, or replaced and the old version kept");
            operation
                    .getResponses()
                    .addAPIResponse(
                            "201",
                            OASFactory.createAPIResponse()
                                    .description("It is new; Location tells its address")
                                    .content(same.getContent()));
        }
    }

    private static void describeBulk(Operation operation, String path) {
        String[] parts = path.split("/");
        String kind = schemaOf(parts[parts.length - 2]);
        Schema rows = OASFactory.createSchema()
                .addType(Schema.SchemaType.OBJECT)
                .addRequired("rows")
                .addProperty(
                        "rows",
                        OASFactory.createSchema()
                                .addType(Schema.SchemaType.ARRAY)
                                .items(OASFactory.createSchema().ref(kind)));
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
                        .addMediaType("text/csv", OASFactory.createMediaType().schema(text))));
        operation
                .getResponses()
                .addAPIResponse(
                        "200",
                        OASFactory.createAPIResponse()
                                .description("Counts and row results, also if every row was refused")
                                .content(content("application/json", "BulkAnswer")));
        operation
                .getResponses()
                .addAPIResponse(
                        "422",
                        OASFactory.createAPIResponse()
                                .description(
                                        "With atomic=true, a row has an error: problem members and the bulk answer together")
                                .content(content(PROBLEM, "BulkAnswer")));
    }

    /** The schema of one record of a kind, by the kind's word in paths. */
    static String schemaOf(String kind) {
        return switch (kind) {
            case "herds" -> "Herd";
            case "animals" -> "Animal";
            case "test-days" -> "TestDay";
            case "calvings" -> "Calving";
            case "dry-offs" -> "DryOff";
            case "departures" -> "Departure";
            case "milkings" -> "Milking";
            case "services" -> "Service";
            case "pregnancy-checks" -> "PregnancyCheck";
            case "treatments" -> "Treatment";
            case "foremilk-checks" -> "ForemilkCheck";
            case "tank-readings" -> "TankReading";
            case "tank-pickups" -> "TankPickup";
            case "milk-uses" -> "MilkUse";
            case "prices" -> "Price";
            default -> throw new IllegalStateException("no schema is named for the bulk path of " + kind);
        };
    }

    /** Scanned schemas come from annotated classes; this one no method returns, since it is written as a stream. */
    private static void addBulkAnswer(OpenAPI api) {
        Schema row = object(Map.of(
                "row", integer("Number of the row, from 1"),
                "line", integer("Line of the file, where it has lines"),
                "outcome", OASFactory.createSchema().ref("Outcome"),
                "id", text("Our id of the record"),
                "version", integer("Its version"),
                "findings",
                        OASFactory.createSchema()
                                .addType(Schema.SchemaType.ARRAY)
                                .items(OASFactory.createSchema().ref("Finding"))));
        Schema answer = object(new TreeMap<>(Map.of(
                "received", integer("Rows read"),
                "created", integer("New records"),
                "updated", integer("Records replaced, old versions kept"),
                "unchanged", integer("Same content already there; nothing written"),
                "superseded", integer("A later row of the request has the same key"),
                "refused", integer("Not stored, because of an error"),
                "rowsReported", integer("How many rows stand in rows"),
                "dryRun", OASFactory.createSchema().addType(Schema.SchemaType.BOOLEAN),
                "atomic", OASFactory.createSchema().addType(Schema.SchemaType.BOOLEAN),
                "rows",
                        OASFactory.createSchema()
                                .addType(Schema.SchemaType.ARRAY)
                                .items(OASFactory.createSchema().ref("RowAnswer")))));
        api.getComponents().addSchema("RowAnswer", row).addSchema("BulkAnswer", answer);
    }

    private static Schema object(Map<String, Schema> properties) {
        return OASFactory.createSchema().addType(Schema.SchemaType.OBJECT).properties(new TreeMap<>(properties));
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
