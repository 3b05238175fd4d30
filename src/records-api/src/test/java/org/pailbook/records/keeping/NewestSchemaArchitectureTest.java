package org.pailbook.records.keeping;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class NewestSchemaArchitectureTest {
    @Test
    void theNewestSchemaTheStartKnowsIsTheNewestMigration() throws IOException {
        Pattern version = Pattern.compile("V([0-9]+)__.*\\.sql");
        try (Stream<Path> scripts = Files.list(Path.of("src/main/resources/db/migration"))) {
            int newest = scripts.map(
                            script -> version.matcher(script.getFileName().toString()))
                    .filter(Matcher::matches)
                    .mapToInt(matched -> Integer.parseInt(matched.group(1)))
                    .max()
                    .orElseThrow();
            assertThat(KeptDatabase.NEWEST_SCHEMA)
                    .as(
                            "KeptDatabase.NEWEST_SCHEMA is raised with each migration, so that an older build refuses the database")
                    .isEqualTo(newest);
        }
    }
}
