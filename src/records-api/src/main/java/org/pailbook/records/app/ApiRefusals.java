package org.pailbook.records.app;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem.HttpMethod;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.responses.APIResponses;

/** How an operation may refuse: one described answer for each status, shared by all operations that give it. */
final class ApiRefusals {
    static final String MEDIA_TYPE = "application/problem+json";

    /** @param meaning said once, in the components of the description */
    private record Refusal(String status, String name, String meaning) {}

    private static final List<Refusal> ALL = List.of(
            new Refusal(
                    "400", "NotReadable", "The request could not be read: malformed body, unknown or bad parameter"),
            new Refusal("401", "NoValidKey", "No valid key"),
            new Refusal("403", "ScopeMissing", "The key lacks the scope"),
            new Refusal("404", "NotFound", "No such record, or out of this key's reach"),
            new Refusal("406", "NotAcceptable", "None of the accepted media types can be sent"),
            new Refusal("409", "Conflict", "It clashes with what is there: its keys point to different records"),
            new Refusal("410", "FeedEnded", "The feed was revoked, has expired, or its key works no more"),
            new Refusal("412", "OtherVersion", "The record has another version than If-Match names"),
            new Refusal("413", "TooLarge", "The body is too large"),
            new Refusal("415", "MediaTypeNotRead", "The body has a media type that is not read here"),
            new Refusal("422", "NotAccepted", "Read, but not acceptable; errors tell each fault and its place"),
            new Refusal("428", "VersionNeeded", "If-Match must name the version that is meant"),
            new Refusal("429", "TooOften", "The key asks too often; Retry-After says when to come again"),
            new Refusal("500", "OurFault", "Something went wrong on our side; requestId finds it in the log"),
            new Refusal("503", "Busy", "The service is busy; Retry-After says when to come again"));

    private ApiRefusals() {}

    static void addTo(OpenAPI api) {
        for (Refusal refusal : ALL) {
            api.getComponents().addResponse(refusal.name(), described(refusal));
        }
    }

    /** Adds what this operation may refuse with, where it does not say so itself. */
    static void addTo(Operation operation, String path, HttpMethod method, boolean open) {
        Map<String, APIResponse> answers =
                new LinkedHashMap<>(operation.getResponses().getAPIResponses());
        for (Refusal refusal : ALL) {
            APIResponse own = answers.get(refusal.status());
            boolean saysMore = own != null && own.getContent() != null;
            if (isPossible(refusal.status(), operation, path, method, open) && !saysMore) {
                answers.put(refusal.status(), OASFactory.createAPIResponse().ref(refusal.name()));
            }
        }
        APIResponses sorted = OASFactory.createAPIResponses();
        answers.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(answer -> sorted.addAPIResponse(answer.getKey(), answer.getValue()));
        operation.setResponses(sorted);
    }

    private static boolean isPossible(
            String status, Operation operation, String path, HttpMethod method, boolean open) {
        boolean hasBody = operation.getRequestBody() != null;
        boolean ofOneRecord = path.startsWith("/v1/herds/") && path.endsWith("}");
        return switch (status) {
            case "401", "403" -> !open;
            case "429" -> !open || path.startsWith("/feeds/");
            case "404" -> path.contains("{");
            case "409" ->
                (method == HttpMethod.POST || method == HttpMethod.PUT || method == HttpMethod.PATCH)
                        && path.startsWith("/v1/herds")
                        && !path.endsWith(ApiBulk.ENDING);
            case "410" -> path.startsWith("/feeds/");
            case "412", "428" -> ofOneRecord && method != HttpMethod.GET && method != HttpMethod.POST;
            case "413", "415", "422" -> hasBody;
            default -> true;
        };
    }

    /** The answer that the operation only points to, as one of its own, so that an example can stand in it. */
    static APIResponse ownOf(Operation operation, String status) {
        APIResponse answer = operation.getResponses().getAPIResponse(status);
        if (answer == null || answer.getRef() == null) {
            return answer;
        }
        Refusal refusal = ALL.stream()
                .filter(one -> one.status().equals(status))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no refusal has the status " + status));
        APIResponse own = described(refusal);
        operation.getResponses().addAPIResponse(status, own);
        return own;
    }

    private static APIResponse described(Refusal refusal) {
        return OASFactory.createAPIResponse()
                .description(refusal.meaning())
                .content(OASFactory.createContent()
                        .addMediaType(
                                MEDIA_TYPE,
                                OASFactory.createMediaType()
                                        .schema(OASFactory.createSchema().ref("Problem"))));
    }
}
