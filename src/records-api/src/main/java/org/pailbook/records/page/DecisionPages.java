package org.pailbook.records.page;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pailbook.lactation.breeding.BreedingList;
import org.pailbook.lactation.breeding.BreedingWorklist;
import org.pailbook.lactation.breeding.ExpectedCalving;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCaution;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.lactation.withheld.WithheldReason;
import org.pailbook.records.computed.BreedingLists.BredLine;
import org.pailbook.records.computed.DecisionLists.RankedLine;
import org.pailbook.records.computed.DecisionLists.WithheldLine;
import org.pailbook.records.computed.DecisionLists.WithheldLines;
import org.pailbook.records.store.CowRecord;

/** What the lists show that a farm decides with. */
final class DecisionPages {
    private DecisionPages() {}

    /** A cow in a list. */
    record Listed(String link, String id, String name) {
        static Listed of(CowRecord record, Shown shown) {
            return new Listed(
                    shown.cow(record.shownIdentifier()),
                    record.shownIdentifier().id(),
                    record.name().orElse(""));
        }
    }

    /**
     * One list to choose.
     *
     * @param cows how many are on it; a dash where counting would take long
     */
    record ListLink(String link, String title, String cows) {}

    /** All lists. */
    record ListsPage(Shown shown, List<ListLink> lists) {
        static ListsPage of(Shown shown, List<WithheldLine> withheld, Map<BreedingList, Long> counts) {
            List<ListLink> lists = Arrays.stream(BreedingList.values())
                    .map(list -> link(shown, path(list), Long.toString(counts.getOrDefault(list, 0L))))
                    .collect(Collectors.toCollection(java.util.ArrayList::new));
            lists.add(0, link(shown, "milk-withheld", Integer.toString(withheld.size())));
            lists.add(link(shown, "udder-health", Shown.NONE));
            lists.add(link(shown, "culling", Shown.NONE));
            return new ListsPage(shown, List.copyOf(lists));
        }

        private static ListLink link(Shown shown, String path, String cows) {
            return new ListLink(shown.page("/lists/" + path), PageWords.word("list." + path), cows);
        }
    }

    /** In an address: {@code due-to-dry-off}. */
    static String path(BreedingList list) {
        return list.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    /** One reason why the milk of one cow stays out. */
    record OutLine(Listed cow, String quarter, String since, String until, String saidBy, String why) {
        static OutLine of(CowRecord record, WithheldReason reason, Shown shown) {
            return new OutLine(
                    Listed.of(record, shown),
                    reason.quarter()
                            .map(quarter -> PageWords.word("quarter." + quarter.wireName()))
                            .orElse(PageWords.word("quarter.all")),
                    reason.since().toLocalDate().toString(),
                    reason.until().map(WithholdingEnd::text).orElse(PageWords.word("withheld.noEnd")),
                    reason.saidBy().isEmpty() ? Shown.NONE : reason.saidBy(),
                    Said.in(reason.said(), shown));
        }
    }

    /** Whose milk stays out of the tank at the end of the day. */
    record WithheldPage(Shown shown, int cows, List<OutLine> lines, int notLookedAt, String caution) {
        static WithheldPage of(Shown shown, WithheldLines withheld) {
            return new WithheldPage(
                    shown,
                    withheld.lines().size(),
                    withheld.lines().stream()
                            .sorted(Comparator.comparing(
                                    line -> line.record().shownIdentifier().id()))
                            .flatMap(line -> line.cow().reasons().stream()
                                    .map(reason -> OutLine.of(line.record(), reason, shown)))
                            .toList(),
                    withheld.foremilkNotRecorded().size(),
                    Said.coded("caution.withheld", WithheldMilk.CAUTION));
        }
    }

    /** A cow on a list of the breeding day. */
    record BredCowLine(
            Listed cow,
            int parity,
            String daysSinceCalving,
            String lastServed,
            String day,
            String why,
            String due,
            String pregnancyValue) {
        static BredCowLine of(BredLine line, Shown shown) {
            var breeding = line.listed().cow();
            return new BredCowLine(
                    Listed.of(line.record(), shown),
                    breeding.now().parity(),
                    breeding.daysSinceCalving().isPresent()
                            ? Integer.toString(breeding.daysSinceCalving().getAsInt())
                            : Shown.NONE,
                    breeding.now()
                            .lastService()
                            .map(service -> service.date().toString())
                            .orElse(Shown.NONE),
                    line.listed().day().toString(),
                    Said.in(line.listed().said(), shown),
                    breeding.expectedCalving()
                            .map(ExpectedCalving::due)
                            .map(Object::toString)
                            .orElse(Shown.NONE),
                    line.pregnancyValue()
                            .map(value -> Shown.number(value.value(), 0))
                            .orElse(Shown.NONE));
        }
    }

    /**
     * One list of the breeding day.
     *
     * @param currency empty text without prices: then no pregnancy has a value
     */
    record BreedingPage(
            Shown shown,
            String path,
            String rule,
            String source,
            String currency,
            Part<BredCowLine> part,
            List<String> cautions) {
        /** Key of its title. */
        public String title() {
            return "list." + path;
        }

        public String address() {
            return "/lists/" + path;
        }

        static BreedingPage of(Shown shown, BreedingList list, List<BredLine> bred, int number) {
            return new BreedingPage(
                    shown,
                    DecisionPages.path(list),
                    Said.coded("rule." + list.wireName(), list.rule()),
                    Said.coded("ruleSource." + list.wireName(), list.source()),
                    bred.isEmpty() ? "" : bred.get(0).currency(),
                    Part.of(
                            bred.stream()
                                    .filter(line -> line.listed().list() == list)
                                    .map(line -> BredCowLine.of(line, shown))
                                    .toList(),
                            number),
                    breedingCautions());
        }
    }

    private static List<String> breedingCautions() {
        return IntStream.range(0, BreedingWorklist.CAUTIONS.size())
                .mapToObj(i -> Said.coded("caution.breeding." + (i + 1), BreedingWorklist.CAUTIONS.get(i)))
                .toList();
    }

    /** A cow in the ranking. */
    record RankedCowLine(
            int rank,
            Listed cow,
            int parity,
            int daysSinceCalving,
            String value,
            String range,
            String suggestion,
            List<String> reasons) {
        static RankedCowLine of(RankedLine line, Shown shown) {
            return new RankedCowLine(
                    line.rank(),
                    Listed.of(line.candidate().record(), shown),
                    line.candidate().parity(),
                    line.candidate().breeding().daysSinceCalving().orElseThrow(),
                    Shown.number(line.figure().value(), line.outlook().isPresent() ? 0 : 1),
                    line.outlook()
                            .flatMap(CowOutlook::range)
                            .map(range -> PageWords.with(
                                    "interval",
                                    Shown.number(OptionalDouble.of(range.lowCu()), 0),
                                    Shown.number(OptionalDouble.of(range.highCu()), 0)))
                            .orElse(Shown.NONE),
                    line.outlook()
                            .flatMap(CowOutlook::suggestion)
                            .map(suggestion -> PageWords.word("suggestion." + suggestion.code()))
                            .orElse(Shown.NONE),
                    line.outlook().map(CowOutlook::reasons).orElse(List.of()).stream()
                            .map(reason -> Said.in(reason.said(), shown))
                            .toList());
        }
    }

    /**
     * The herd in the order of what keeping each cow is worth.
     *
     * @param currency empty text where the list is by milk alone
     */
    record CullingPage(Shown shown, String currency, String method, Part<RankedCowLine> part, String caution) {
        static CullingPage of(Shown shown, List<RankedLine> ranking, int number) {
            Part<RankedLine> some = Part.of(ranking, number);
            return new CullingPage(
                    shown,
                    ranking.isEmpty() ? "" : ranking.get(0).currency(),
                    ranking.isEmpty()
                            ? ""
                            : PageWords.with(
                                    "method",
                                    ranking.get(0).figure().method().id(),
                                    ranking.get(0).figure().method().version()),
                    some.as(line -> RankedCowLine.of(line, shown)),
                    Said.coded("caution.culling", CullingCaution.TEXT));
        }
    }
}
