package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.SharedData;

/** The 144 open lactations, also as they stood after their first tests: is the minimum that is found the lowest there is? */
class OpenLactationsOpenDataTest {

    private record Tests(String name, double[] days, double[] kg) {}

    /** Every lactation with its first 4, 5, ... tests. */
    private static List<Tests> growingLactations() throws IOException {
        List<String> lines = Files.readAllLines(SharedData.orSkip().resolve("testdays-open.csv"));
        List<String> header = List.of(lines.get(0).split(","));
        Map<String, List<double[]>> rows = new LinkedHashMap<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            String milk = cells[header.indexOf("milk_kg")];
            if (!milk.isEmpty()) {
                rows.computeIfAbsent(
                                cells[header.indexOf("animal")] + "/" + cells[header.indexOf("parity")],
                                key -> new ArrayList<>())
                        .add(new double[] {Double.parseDouble(cells[header.indexOf("dim")]), Double.parseDouble(milk)});
            }
        }
        List<Tests> all = new ArrayList<>();
        rows.forEach((name, tests) -> {
            for (int n = 4; n <= tests.size(); n++) {
                all.add(new Tests(
                        name + " with " + n + " tests",
                        tests.stream().limit(n).mapToDouble(test -> test[0]).toArray(),
                        tests.stream().limit(n).mapToDouble(test -> test[1]).toArray()));
            }
        });
        return all;
    }

    // the plain and slow way: a grid over b and c with the best a for each
    @Test
    void noPointOfAGridOverBAndCFitsBetterThanOurWoodCurve() throws IOException {
        List<Tests> all = growingLactations();
        assertThat(all).hasSizeGreaterThan(900);
        for (Tests tests : all) {
            double ours = LactationCurves.WOOD
                    .estimate(tests.days(), tests.kg())
                    .rssKg2()
                    .orElseThrow(() -> new AssertionError(tests.name()));
            double[] logs = Arrays.stream(tests.days()).map(Math::log).toArray();
            double least = Double.POSITIVE_INFINITY;
            for (double b = -1; b <= 2; b += 0.1) {
                for (double c = -0.02; c <= 0.06; c += 0.002) {
                    double yg = 0;
                    double gg = 0;
                    double yy = 0;
                    for (int i = 0; i < logs.length; i++) {
                        double g = Math.exp(b * logs[i] - c * tests.days()[i]);
                        yg += tests.kg()[i] * g;
                        gg += g * g;
                        yy += tests.kg()[i] * tests.kg()[i];
                    }
                    least = Math.min(least, yy - yg * yg / gg);
                }
            }
            assertThat(ours).as(tests.name()).isLessThanOrEqualTo(least + 1e-9);
        }
    }

    // at a minimum over the rate the residuals are orthogonal to the change of the curve with it
    @Test
    void whereARateIsFoundTheSquaresHaveNoSlopeLeft() throws IOException {
        int fitted = 0;
        for (Tests tests : growingLactations()) {
            for (CurveModel model :
                    List.of(LactationCurves.DIJKSTRA, LactationCurves.COBBY_LE_DU, LactationCurves.WILMINK_FREE_RATE)) {
                CurveEstimate fit = model.estimate(tests.days(), tests.kg());
                if (fit.curve().isEmpty()) {
                    continue;
                }
                fitted++;
                double[] residuals = fit.residualsKg();
                for (int k = 0; k < model.parameterCount(); k++) {
                    double dot = 0;
                    double length = 0;
                    for (int i = 0; i < residuals.length; i++) {
                        double derivative = fit.curve().orElseThrow().gradient(tests.days()[i])[k];
                        dot += derivative * residuals[i];
                        length += derivative * derivative;
                    }
                    assertThat(dot / Math.sqrt(length))
                            .as("%s %s parameter %d", model.id(), tests.name(), k)
                            .isCloseTo(0, Offset.offset(1e-5));
                }
            }
        }
        assertThat(fitted).isGreaterThan(1000);
    }
}
