package org.pailbook.records.intake;

import java.util.List;

/**
 * One column a table of this kind may have.
 *
 * @param name in the header, snake_case with unit
 * @param path members from the record inwards: {@code animal, scheme}
 * @param type how its cells are read
 */
public record Column(String name, List<String> path, Type type) {
    /** How cells are read. */
    public enum Type {
        TEXT,
        NUMBER,
        /** {@code true} or {@code false}. */
        TRUTH
    }

    public static Column text(String name, String... path) {
        return new Column(name, List.of(path), Type.TEXT);
    }

    public static Column number(String name, String... path) {
        return new Column(name, List.of(path), Type.NUMBER);
    }

    public static Column flag(String name, String... path) {
        return new Column(name, List.of(path), Type.TRUTH);
    }

    /** Where the cell stands in the record, as a pointer. */
    public String pointer() {
        return "/" + String.join("/", path);
    }
}
