package org.pailbook.records.udder;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.udderhealth.TankSample;
import org.pailbook.lactation.udderhealth.TankShares;
import org.pailbook.lactation.udderhealth.TankStanding;
import org.pailbook.lactation.withheld.MilkedCow;
import org.pailbook.lactation.withheld.WithheldCow;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.computed.HerdTank;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.OrNull;

/** The tank by its own counts and by those of the cows. */
@ApplicationScoped
class TankQueries {
    private final HerdTank tank;

    @Inject
    TankQueries(HerdTank tank) {
        this.tank = tank;
    }

    /** Of the herd's last test; cows whose milk was withheld on that day are out. */
    UdderHealthView.TankView view(
            HerdRow herd,
            List<UdderHealthQueries.Animal> animals,
            List<MilkedCow> milked,
            WithheldMilk rules,
            Optional<LocalDate> lastTest,
            Optional<TankStanding> standing,
            LocalDate asOf) {
        Map<String, AnimalIdentifier> shown = animals.stream()
                .collect(Collectors.toMap(
                        animal -> animal.record().id(),
                        animal -> animal.record().shownIdentifier()));
        Map<String, TestDay> tests = new LinkedHashMap<>();
        Set<String> withheld = new HashSet<>();
        lastTest.ifPresent(date -> {
            animals.forEach(animal -> testOn(animal, date)
                    .ifPresent(test -> tests.put(animal.record().id(), test)));
            rules.of(milked, WithheldMilk.endOf(date)).stream()
                    .map(WithheldCow::animal)
                    .forEach(withheld::add);
        });
        TankShares shares = TankShares.of(tests, withheld, asOf);
        Function<String, AnimalIdentifier> identifier = shown::get;
        List<TankSample> samples = tank.samples(herd, asOf);
        return new UdderHealthView.TankView(
                FigureView.of(shares.estimate(), false),
                shares.cows().stream()
                        .map(cow -> new UdderHealthView.ShareView(
                                shown.get(cow.animal()),
                                cow.milkKg(),
                                cow.sccThousandPerMl(),
                                cow.sharePct(),
                                OrNull.of(cow.tankWithoutHer())))
                        .toList(),
                shares.withheld().stream().map(identifier).toList(),
                shares.withoutCount().stream().map(identifier).toList(),
                samples.isEmpty() ? null : measured(samples.get(samples.size() - 1)),
                standing.map(TankQueries::view).orElse(null));
    }

    private static Optional<TestDay> testOn(UdderHealthQueries.Animal animal, LocalDate date) {
        return animal.onDay().lactations().lactations().stream()
                .flatMap(one -> one.lactation().testDays().stream())
                .filter(test -> test.date().equals(date))
                .reduce((earlier, later) -> later);
    }

    private static UdderHealthView.MeasuredTankView measured(TankSample sample) {
        return new UdderHealthView.MeasuredTankView(sample.date().toString(), sample.sccThousandPerMl());
    }

    private static UdderHealthView.StandingView view(TankStanding standing) {
        return new UdderHealthView.StandingView(
                standing.limit().id(),
                standing.standing().wireName(),
                OrNull.of(standing.value()),
                standing.samplesUsed().size(),
                standing.words());
    }
}
