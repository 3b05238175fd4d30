package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.lactation.breeding.BreedingList;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.breeding.BreedingWorklist;
import org.pailbook.lactation.breeding.ListedCow;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.HerdRow;

/** The lists of the breeding day, one line a cow: the one walk for answers, tables and pages. */
@ApplicationScoped
public class BreedingLists {
    private final HerdBreeding breeding;
    private final HerdSettings settings;
    private final HerdValuation valuation;

    @Inject
    BreedingLists(HerdBreeding breeding, HerdSettings settings, HerdValuation valuation) {
        this.breeding = breeding;
        this.settings = settings;
        this.valuation = valuation;
    }

    /**
     * A cow on a list.
     *
     * @param pregnancyValue of her pregnancy or, of an open cow, of a conception in this month; empty where there is none
     * @param currency of it; empty text without prices
     */
    public record BredLine(
            CowRecord record,
            ListedCow listed,
            BreedingSettings settings,
            Optional<Figure> pregnancyValue,
            String currency) {}

    /**
     * All lists of a day.
     *
     * @param lines list by list
     * @param animals all of the herd
     */
    public record BredLines(
            BreedingSettings settings,
            UsedSettingsView used,
            List<BredLine> lines,
            List<BreedingRecord> animals,
            PregnancyWorth worth) {}

    /** By the herd's own settings. */
    public BredLines on(HerdRow herd, LocalDate day) {
        return on(herd, day, SettingsInForce::breeding);
    }

    /** @param asked settings of the request over the herd's */
    public BredLines on(HerdRow herd, LocalDate day, Function<SettingsInForce, BreedingSettings> asked) {
        SettingsInForce inForce = settings.on(herd, day);
        BreedingSettings own = asked.apply(inForce);
        List<HerdBreeding.BredCow> cows = breeding.of(herd, day);
        PregnancyWorth worth = valuation.pregnancies(herd, cows, day);
        Map<String, HerdBreeding.BredCow> byId =
                cows.stream().collect(Collectors.toMap(cow -> cow.record().id(), Function.identity()));
        // a cow may be on several lists
        Map<String, Optional<Figure>> values = new HashMap<>();
        List<BreedingRecord> animals = breedingOf(cows);
        List<BredLine> lines = BreedingWorklist.with(own).of(animals).stream()
                .map(listed -> {
                    HerdBreeding.BredCow cow = byId.get(listed.cow().animal());
                    return new BredLine(
                            cow.record(),
                            listed,
                            own,
                            values.computeIfAbsent(cow.record().id(), id -> worth.of(cow, day)),
                            worth.currency().orElse(""));
                })
                .toList();
        return new BredLines(own, inForce.used(), lines, animals, worth);
    }

    /** How many cows are on each list, of animals that have been read already; a list without one is left out. */
    public Map<BreedingList, Long> counts(HerdRow herd, List<CowRecord> animals, LocalDate day) {
        return BreedingWorklist.with(settings.on(herd, day).breeding())
                .of(breedingOf(breeding.of(herd, animals, day)))
                .stream()
                .collect(Collectors.groupingBy(ListedCow::list, Collectors.counting()));
    }

    private static List<BreedingRecord> breedingOf(List<HerdBreeding.BredCow> cows) {
        return cows.stream().map(HerdBreeding.BredCow::breeding).toList();
    }
}
