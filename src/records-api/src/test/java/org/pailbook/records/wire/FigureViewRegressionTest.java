package org.pailbook.records.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormulas;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;

class FigureViewRegressionTest {
    /** Over a large herd that is most of the work of an answer. */
    @Test
    void howAFigureWasMadeIsPutTogetherOnlyForWhoeverAsks() {
        AtomicInteger times = new AtomicInteger();
        Figure figure = Figure.of(CorrectedMilkFormulas.all().get(0), "kg", LocalDate.of(2025, 11, 12))
                .value(30)
                .explanation(() -> {
                    times.incrementAndGet();
                    return new Explanation(List.of(new Explanation.Part("30 kg", 30)));
                })
                .build();
        assertThat(FigureView.of(figure, false).explanation()).isNull();
        assertThat(times).hasValue(0);
        assertThat(FigureView.of(figure, true).explanation()).hasSize(1);
        assertThat(times).hasValue(1);
    }
}
