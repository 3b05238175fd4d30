package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.exchange.KindTables;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.MilkByDay;
import org.pailbook.records.upload.ColumnLook;
import org.pailbook.records.upload.FileDates;
import org.pailbook.records.upload.FileMapping;
import org.pailbook.records.upload.FileView;
import org.pailbook.records.upload.Questions;

/** What a file must be asked before its rows can be read, in words: where one answer is as likely as another, nothing is guessed. */
@ApplicationScoped
public class ImportQuestions {
    private final KindTables kinds;
    private final MilkByDay milk;

    @Inject
    ImportQuestions(KindTables kinds, MilkByDay milk) {
        this.kinds = kinds;
        this.milk = milk;
    }

    /** What is asked of a file, each with its answers and the one given or told by the file itself. */
    List<ImportPages.Question> of(HerdRow herd, FileView view, FileMapping mapping) {
        List<ImportPages.Question> questions = new ArrayList<>();
        if (view.beginsWithData()) {
            questions.add(new ImportPages.Question(
                    "header",
                    PageWords.word("import.ask.header"),
                    String.join(" | ", view.first().get(0)),
                    choices("import.header.", List.of("no", "yes"), mapping.hasHeader() ? "yes" : "no")));
        }
        List<String> headings = view.headings(mapping.hasHeader());
        Questions.units(view, headings, mapping.columns(), mapping.kind(), milk.meanOfLastTestKg(herd))
                .values()
                .forEach(asked -> {
                    Optional<FileUnit> said =
                            Optional.ofNullable(mapping.units().get(asked.column()));
                    FileUnit chosen =
                            said.orElse(asked.isOdd() ? null : asked.units().get(0));
                    questions.add(new ImportPages.Question(
                            "unit." + asked.column(),
                            PageWords.with("import.ask.unit", headings.get(asked.place())),
                            (asked.byHeading().isPresent() ? PageWords.word("import.evidence.heading") + " " : "")
                                    + String.format(
                                            PageWords.word("import.evidence.unit"),
                                            TypedNumber.whole(asked.least()),
                                            TypedNumber.whole(asked.most()),
                                            TypedNumber.whole(asked.median())),
                            asked.units().stream()
                                    .map(unit -> new ImportPages.Choice(
                                            unit.wireName(), PageWords.word("unit." + unit.wireName()), unit == chosen))
                                    .toList()));
                });
        dates(view, mapping).ifPresent(questions::add);
        commas(view, mapping).ifPresent(questions::add);
        return questions;
    }

    private static Optional<ImportPages.Question> dates(FileView view, FileMapping mapping) {
        List<ColumnLook> looks = Questions.dates(view, mapping.columns());
        if (looks.isEmpty()) {
            return Optional.empty();
        }
        String chosen = mapping.dates()
                .filter(dates -> dates != FileDates.YEAR_FIRST)
                .or(() -> Questions.toldDates(looks))
                .map(FileDates::wireName)
                .orElse("");
        return Optional.of(new ImportPages.Question(
                "dates",
                PageWords.word("import.ask.dates"),
                PageWords.with("import.evidence.dates", looks.get(0).exampleOfDate()),
                choices("import.dates.", List.of("day-first", "month-first"), chosen)));
    }

    private Optional<ImportPages.Question> commas(FileView view, FileMapping mapping) {
        List<ColumnLook> looks = Questions.commas(
                view,
                mapping.columns(),
                kinds.kind(mapping.kind()).orElseThrow(Problem::notFound).columns());
        if (looks.isEmpty()) {
            return Optional.empty();
        }
        boolean isTold = looks.stream().noneMatch(ColumnLook::hasPoints)
                && looks.stream().anyMatch(look -> !look.hasOnlyDoubtfulCommas());
        String chosen =
                mapping.decimalComma().map(comma -> comma ? "comma" : "point").orElse(isTold ? "comma" : "");
        return Optional.of(new ImportPages.Question(
                "decimal",
                PageWords.word("import.ask.decimal"),
                PageWords.with("import.evidence.decimal", looks.get(0).exampleWithComma()),
                choices("import.decimal.", List.of("comma", "point"), chosen)));
    }

    private static List<ImportPages.Choice> choices(String words, List<String> values, String chosen) {
        return values.stream()
                .map(value -> new ImportPages.Choice(value, PageWords.word(words + value), value.equals(chosen)))
                .toList();
    }
}
