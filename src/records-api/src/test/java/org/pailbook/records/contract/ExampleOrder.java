package org.pailbook.records.contract;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The order in which examples build on each other, as the file beside them says. */
final class ExampleOrder {
    static final Path FOLDER = Path.of("src", "main", "resources", "openapi-examples");

    private ExampleOrder() {}

    /** Names of all files of examples, without their ending. */
    static List<String> stems() throws IOException {
        return Files.readAllLines(FOLDER.resolve("order.txt")).stream()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                .toList();
    }

    /** All examples of the document in that order. */
    static List<ApiExample> of(ApiDocument document) throws IOException {
        List<String> stems = stems();
        List<ApiExample> examples = new ArrayList<>();
        document.operations().forEach(operation -> examples.addAll(operation.examples()));
        examples.sort(Comparator.comparingInt(example -> stems.indexOf(example.stem())));
        return examples;
    }
}
