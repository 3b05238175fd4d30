package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** An OpenAPI document. */
record ApiDocument(JsonNode root) {
    static final ObjectMapper JSON = new ObjectMapper();
    private static final String NAME = "openapi/pailbook-v1.json";
    private static final Set<String> METHODS = Set.of("get", "put", "post", "delete", "patch", "head", "options");

    /** The one that is committed, and that the build has just made. */
    static ApiDocument committed() throws IOException {
        for (Path folder = Path.of("").toAbsolutePath(); folder != null; folder = folder.getParent()) {
            Path file = folder.resolve(NAME);
            if (Files.exists(file)) {
                return of(Files.readString(file));
            }
        }
        throw new IllegalStateException("no folder above this one has " + NAME);
    }

    static ApiDocument of(String json) throws IOException {
        return new ApiDocument(JSON.readTree(json));
    }

    List<ApiOperation> operations() {
        List<ApiOperation> found = new ArrayList<>();
        root.get("paths")
                .fields()
                .forEachRemaining(path -> path.getValue().fields().forEachRemaining(method -> {
                    if (METHODS.contains(method.getKey())) {
                        found.add(new ApiOperation(
                                this, method.getKey().toUpperCase(), path.getKey(), method.getValue()));
                    }
                }));
        return found;
    }

    Map<String, ApiOperation> operationsById() {
        return operations().stream()
                .collect(Collectors.toMap(ApiOperation::id, operation -> operation, (one, two) -> one, TreeMap::new));
    }

    /** What a reference points to; a node without one as it is. */
    JsonNode resolved(JsonNode node) {
        JsonNode found = node;
        while (found.has("$ref")) {
            found = root.at(found.get("$ref").asText().substring(1));
        }
        return found;
    }

    @Override
    public String toString() {
        return NAME;
    }
}
