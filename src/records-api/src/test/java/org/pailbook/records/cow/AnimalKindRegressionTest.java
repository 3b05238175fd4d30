package org.pailbook.records.cow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.pailbook.records.store.SupersededVersionRow;

class AnimalKindRegressionTest {
    /** Until they were limited together, those posted and those kept from before could be more than one post may hold. */
    @Test
    void aReplacedVersionComesBackWithAllItsIdentifiers() {
        SupersededVersionRow version = new SupersededVersionRow();
        version.content = IntStream.range(0, 12)
                .mapToObj(n -> "{\"scheme\":\"example.eartag\",\"id\":\"N" + n + "\"}")
                .collect(Collectors.joining(",", "{\"identifiers\":[", "],\"name\":\"Mimosa\"}"));
        assertThat(new AnimalKind().restore(version).identifiers).hasSize(12);
    }
}
