package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.records.computed.HerdCows;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** Every animal and her state. */
@ApplicationScoped
class AnimalsReport implements Report<KnownCow> {
    private final HerdCows cows;

    @Inject
    AnimalsReport(HerdCows cows) {
        this.cows = cows;
    }

    @Override
    public String name() {
        return "animals";
    }

    @Override
    public String meaning() {
        return "One animal born by the day, in the order in which they were first posted";
    }

    @Override
    public List<Column<KnownCow>> columns() {
        return List.of(
                CowColumns.scheme(KnownCow::identifier),
                CowColumns.id(KnownCow::identifier),
                CowColumns.name(cow -> cow),
                Column.text("breed", "ICAR code or text, as entered", cow -> cow.animal().breed),
                Column.text("sex", "female or male, as entered", cow -> cow.animal().sex),
                Column.date("birth_date", "As entered", cow -> Optional.ofNullable(cow.animal().birthDate)),
                Column.text(
                        "state",
                        "inMilk, dry, left or notCalved",
                        cow -> cow.onDay().state().wireName()),
                Column.count(
                        "parity",
                        "",
                        "Number of her calvings, the last one counted",
                        cow -> latest(cow).map(Lactation::parity).orElse(null)),
                Column.date("calved_on", "Her last calving", cow -> latest(cow).map(Lactation::calvingDate)),
                Column.count(
                        "days_in_milk",
                        "d",
                        "Only while she is in milk; the calving day is 0",
                        cow -> cow.onDay().daysInMilk().isPresent()
                                ? cow.onDay().daysInMilk().getAsInt()
                                : null));
    }

    private static Optional<Lactation> latest(KnownCow cow) {
        return cow.onDay().lactations().latest().map(AssembledLactation::lactation);
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<KnownCow> each) {
        cows.each(herd, asOf.day(), each);
    }

    @Override
    public List<Finding> findings(KnownCow cow) {
        return cow.findings();
    }
}
