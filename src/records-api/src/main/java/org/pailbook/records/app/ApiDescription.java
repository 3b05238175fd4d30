package org.pailbook.records.app;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem.HttpMethod;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.security.SecurityRequirement;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;

/**
 * Adds to the description of the API what is the same for every operation: keys and scopes, refusals, path parameters, the forms of bulk
 * bodies, examples. Written once here, it would drown each method as annotations.
 */
@OpenApiFilter(OpenApiFilter.RunStage.BUILD)
public class ApiDescription implements OASFilter {
    /** Below this nothing is stored, so nothing is created. */
    private static final String CALCULATE = "/v1/calculate/";

    /** What is posted here is new each time: nothing tells it from what is there. */
    private static final Set<String> NEW_EACH_TIME = Set.of("/v1/keys", "/v1/feeds");

    private static final List<String> WAYS_TO_SEND_A_KEY = List.of("apiKey", "bearer", "basic");
    private static final Map<String, String> PATH_PARAMETERS = Map.of(
            "code", "Stable code of the problem, as in the member code of its body",
            "herd", "Code of the herd",
            "animal", "Our id of the animal, or scheme:id with the colon as it is or percent-encoded",
            "id", "Our id",
            "report", "Name of the table",
            "token", "Secret of the feed",
            "parity", "Number of calvings, 1 for the first lactation");

    private static final Pattern IN_BRACES = Pattern.compile("\\{([^}]+)}");

    @Override
    public void filterOpenAPI(OpenAPI api) {
        addKeys(api);
        ApiRefusals.addTo(api);
        ApiBulk.addAnswer(api);
        api.getPaths()
                .getPathItems()
                .forEach((path, item) -> item.getOperations().forEach((method, operation) -> {
                    VersionDescription.describe(api, path, method, operation);
                    RecordDescription.describe(api, path, method, operation);
                    describe(api, path, method, operation);
                }));
        new ApiExamples().addTo(api);
    }

    private static void describe(OpenAPI api, String path, HttpMethod method, Operation operation) {
        boolean open = !path.startsWith("/v1");
        operation.setSecurity(open ? List.of() : keysOfScope(scope(path, method)));
        describePath(path, operation);
        if (method == HttpMethod.POST && path.endsWith(ApiBulk.ENDING)) {
            ApiBulk.describe(api, path, operation);
        } else if (method == HttpMethod.POST && !open && !path.startsWith(CALCULATE) && !path.contains("{id}")) {
            addCreated(operation);
            if (NEW_EACH_TIME.contains(path)) {
                operation.getResponses().removeAPIResponse("200");
            }
        }
        ApiRefusals.addTo(operation, path, method, open);
        if (method == HttpMethod.POST && !open && !path.startsWith(CALCULATE)) {
            VersionDescription.describeOnceOnly(operation);
        }
    }

    /** Which scope the operation needs; null where any key will do. The contract tests hold this against the service. */
    private static String scope(String path, HttpMethod method) {
        if (path.startsWith(CALCULATE)) {
            return "calculate";
        }
        if (path.startsWith("/v1/herds")) {
            return method == HttpMethod.GET ? "read" : "write";
        }
        if (path.equals("/v1/feeds") && method == HttpMethod.POST) {
            return "read";
        }
        return path.startsWith("/v1/keys") ? "admin" : null;
    }

    private static List<SecurityRequirement> keysOfScope(String scope) {
        List<String> scopes = scope == null ? List.of() : List.of(scope);
        return WAYS_TO_SEND_A_KEY.stream()
                .map(way -> OASFactory.createSecurityRequirement().addScheme(way, scopes))
                .toList();
    }

    private static void addKeys(OpenAPI api) {
        api.getComponents()
                .addSecurityScheme(
                        "apiKey",
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.APIKEY)
                                .in(SecurityScheme.In.HEADER)
                                .name("X-API-Key")
                                .description("The names beside it in an operation are the scopes the key must have"))
                .addSecurityScheme(
                        "bearer",
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description("The key as bearer token"))
                .addSecurityScheme(
                        "basic",
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("basic")
                                .description("Any user name, the key as password"));
    }

    private static void describePath(String path, Operation operation) {
        // a method inherited by many resources does not name what their paths do
        List<Parameter> inOrder = new ArrayList<>();
        Matcher names = IN_BRACES.matcher(path);
        while (names.find()) {
            String name = names.group(1);
            Parameter known = operation.getParameters() == null
                    ? null
                    : operation.getParameters().stream()
                            .filter(one -> one.getIn() == Parameter.In.PATH
                                    && one.getName().equals(name))
                            .findFirst()
                            .orElse(null);
            if (known == null) {
                known = OASFactory.createParameter()
                        .name(name)
                        .in(Parameter.In.PATH)
                        .required(true)
                        .schema(OASFactory.createSchema().addType(Schema.SchemaType.STRING));
                operation.addParameter(known);
            }
            if (known.getDescription() == null) {
                known.setDescription(PATH_PARAMETERS.get(name));
            }
            inOrder.add(known);
        }
        // generated clients take them in this order: those of the path first, as they stand in it
        if (operation.getParameters() != null) {
            operation.getParameters().stream()
                    .filter(one -> one.getIn() != Parameter.In.PATH)
                    .forEach(inOrder::add);
            operation.setParameters(inOrder);
        }
    }

    /** Name of the schema of one record, from what is answered where records of its kind are posted. */
    static String recordName(OpenAPI api, String listPath) {
        String ref = api.getPaths()
                .getPathItem(listPath)
                .getPOST()
                .getResponses()
                .getAPIResponse("200")
                .getContent()
                .getMediaType("application/json")
                .getSchema()
                .getRef();
        return ref.substring(ref.lastIndexOf('/') + 1).replaceFirst("^PostedAnswer(.*)Body$", "$1");
    }

    private static void addCreated(Operation operation) {
        APIResponse same = operation.getResponses().getAPIResponse("200");
        if (same != null && operation.getResponses().getAPIResponse("201") == null) {
            same.setDescription("It was there; unchanged, or replaced and the old version kept");
            // examples go into each of the two by itself, so the content must not be shared
            operation
                    .getResponses()
                    .addAPIResponse(
                            "201",
                            OASFactory.createAPIResponse()
                                    .description("It is new; Location tells its address")
                                    .content(copy(same)));
        }
    }

    private static Content copy(APIResponse of) {
        Content content = OASFactory.createContent();
        of.getContent()
                .getMediaTypes()
                .forEach((name, mediaType) ->
                        content.addMediaType(name, OASFactory.createMediaType().schema(mediaType.getSchema())));
        return content;
    }
}
