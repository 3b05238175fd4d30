package org.pailbook.lactation.culling;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.SharedData;

class CowValueOpenDataTest {
    // Reference program in Python (numpy, dense linear algebra); money to 1e-6 cu
    @Test
    void all1665StagesAreWhatTheReferenceProgramGives() throws IOException {
        Path file = SharedData.orSkip().resolveSibling("science/reference/cow_value_expected.csv");
        Assumptions.assumeTrue(Files.isRegularFile(file), "the reference program's output is not here: " + file);
        assertThat(CowValueRows.compare(Files.readAllLines(file))).isEqualTo(1665);
    }
}
