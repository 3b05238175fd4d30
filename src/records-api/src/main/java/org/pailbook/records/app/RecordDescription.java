package org.pailbook.records.app;

import java.util.Locale;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;

/**
 * Describes what every kind of record answers besides {@link VersionDescription}: list, one, post, post many. Their methods stand once,
 * in the exchange, so names, summaries and bodies come from the path.
 */
final class RecordDescription {
    /** Stands between class and method in the id of an operation that was given none. */
    private static final String GENERATED = "_";

    private RecordDescription() {}

    static void describe(OpenAPI api, String path, PathItem.HttpMethod method, Operation operation) {
        String list = path.replaceFirst("/(bulk|\\{id})$", "");
        boolean named = !operation.getOperationId().contains(GENERATED);
        if (named || !api.getPaths().getPathItems().containsKey(list + "/{id}")) {
            return;
        }
        String record = ApiDescription.recordName(api, list);
        String kind = list.substring(list.lastIndexOf('/') + 1);
        String many = words(kind);
        String one = many.substring(0, many.length() - 1);
        if (method == PathItem.HttpMethod.GET && path.equals(list)) {
            operation.operationId("list" + camel(kind)).summary("The " + many + " of a herd, by day");
        } else if (method == PathItem.HttpMethod.GET) {
            operation.operationId("get" + record).summary("One " + one);
        } else if (method == PathItem.HttpMethod.POST && path.equals(list)) {
            operation.operationId("upsert" + record).summary("Post one " + one + "; a resend changes nothing");
            VersionDescription.takeBody(
                    operation, "application/json", OASFactory.createSchema().ref(record));
        } else if (method == PathItem.HttpMethod.POST) {
            operation.operationId("bulk" + camel(kind)).summary("Post many " + many + " as JSON, NDJSON or CSV");
        }
    }

    /** {@code dry-offs} is written so in the trade as well. */
    private static String words(String kind) {
        return kind.replaceAll("-(?!off)", " ");
    }

    private static String camel(String kind) {
        StringBuilder name = new StringBuilder();
        for (String word : kind.split("-")) {
            name.append(word.substring(0, 1).toUpperCase(Locale.ROOT)).append(word.substring(1));
        }
        return name.toString();
    }
}
