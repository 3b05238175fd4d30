package org.pailbook.records.page;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.lactation.udderhealth.HerdCellCounts;
import org.pailbook.lactation.udderhealth.SomaticCellScore;
import org.pailbook.lactation.udderhealth.TankStanding;
import org.pailbook.lactation.udderhealth.VeterinaryTrigger;
import org.pailbook.records.store.CowRecord;

/**
 * Cell counts of the herd's last test, highest first, with the rates of that test.
 *
 * @param highFrom count from which a cow is called high
 * @param calls what speaks for seeing the veterinarian
 */
record UdderPage(
        Shown shown,
        String highFrom,
        List<ShownFigure> figures,
        List<String> calls,
        Part<CellLine> part,
        String caution) {

    /** A cow's count. */
    record CellLine(DecisionPages.Listed cow, int parity, String test, String scc, String score, String state) {}

    static UdderPage of(
            Shown shown, List<CowRecord> animals, CellCountCut cut, Optional<TankStanding> tank, int number) {
        LocalDate day = shown.asOf();
        HerdCellCounts herd = HerdCellCounts.of(
                animals.stream().map(animal -> animal.onDay(day).cellCounts()).toList(), cut, day);
        Map<String, CowRecord> byId = animals.stream().collect(Collectors.toMap(CowRecord::id, Function.identity()));
        return new UdderPage(
                shown,
                Shown.number(cut.highFromThousandPerMl(), 0),
                Stream.concat(Stream.of(herd.prevalence()), herd.ratesOfLastTest().stream())
                        .map(measured -> ShownFigure.named(
                                Said.coded(
                                        "measure." + measured.measure().id(),
                                        measured.measure().what()),
                                measured.figure(),
                                1,
                                shown))
                        .toList(),
                Stream.concat(
                                VeterinaryTrigger.ofHerd(
                                                herd.newInfectionRisksOfLastTwoTests(), herd.freshHeifersHigh(), tank)
                                        .stream()
                                        .map(trigger ->
                                                Said.coded("veterinary." + trigger.wireName(), trigger.words())),
                                tank.map(standing -> Said.in(standing.said(), shown)).stream())
                        .toList(),
                Part.of(herd.ofLastTest(), number)
                        .as(one -> line(byId.get(one.cow().animal()), one, cut, shown)),
                Said.coded("caution.cells", VeterinaryTrigger.CAUTION));
    }

    private static CellLine line(CowRecord cow, HerdCellCounts.Counted one, CellCountCut cut, Shown shown) {
        String high = PageWords.word(cut.isHigh(one.test()) ? "udder.high" : "udder.low");
        return new CellLine(
                DecisionPages.Listed.of(cow, shown),
                one.cow().lastParity(),
                one.test().date().toString(),
                Shown.number(one.sccThousandPerMl(), 0),
                Shown.number(SomaticCellScore.score(one.sccThousandPerMl()), 1),
                one.cow()
                        .lastPair(cut, shown.asOf())
                        .map(pair -> high + ", "
                                + PageWords.word("udder.state." + pair.state().wireName()))
                        .orElse(high));
    }
}
