package org.pailbook.lactation;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** The example of README, as it stands there. */
class FirstFigureTest {
    // snippet
    static Figure firstFigure() {
        Lactation lactation = Lactation.inMilk(
                2,
                LocalDate.of(2025, 8, 19),
                List.of(
                        TestDay.ofMilk(LocalDate.of(2025, 9, 16), 31.2),
                        TestDay.ofMilk(LocalDate.of(2025, 10, 14), 33.0),
                        TestDay.ofMilk(LocalDate.of(2025, 11, 12), 30.4)));
        return new BestPrediction()
                .project(lactation, LactationStandards.forCow("HOL", 2), LocalDate.of(2025, 11, 30))
                .milk305();
    }
    // snippet end

    @Test
    void hasAValueWithinItsIntervals() {
        Figure figure = firstFigure();
        assertThat(figure.orThrow())
                .isBetween(
                        figure.interval(0.80).orElseThrow().low(),
                        figure.interval(0.80).orElseThrow().high());
        assertThat(figure.inputs().stream().filter(input -> input.kind().equals("test-day")))
                .hasSize(3);
    }

    @Test
    void partsAddUpToTheFigure() {
        Figure figure = firstFigure();
        assertThat(figure.explanation().total()).isCloseTo(figure.orThrow(), org.assertj.core.data.Offset.offset(1e-6));
    }

    @Test
    void isTheOneReadmeShows() throws Exception {
        Path readme = Path.of("..", "..", "README.md");
        String shown = Files.readString(readme);
        Figure figure = firstFigure();
        assertThat(shown).contains(String.format(java.util.Locale.ROOT, "%.0f kg", figure.orThrow()));
        String source = Files.readString(Path.of("src/test/java/org/pailbook/lactation/FirstFigureTest.java"));
        String lines = source.split("// snippet")[1];
        String body = lines.substring(lines.indexOf('{') + 1, lines.lastIndexOf("return"));
        // the page and the formatter break lines in different places
        assertThat(withoutBlanks(shown)).contains(withoutBlanks(body));
    }

    private static String withoutBlanks(String text) {
        return text.replaceAll("\\s+", "");
    }
}
