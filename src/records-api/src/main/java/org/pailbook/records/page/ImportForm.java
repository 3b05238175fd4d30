package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.exchange.KindTables;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.DatedKind;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KnownAnimals;
import org.pailbook.records.upload.FileDates;
import org.pailbook.records.upload.FileMapping;
import org.pailbook.records.upload.FileView;
import org.pailbook.records.upload.PendingFile;
import org.pailbook.records.upload.Questions;
import org.pailbook.records.upload.RefusedRows;
import org.pailbook.records.upload.Remembered;

/** The form in which the columns of a file are given a meaning: proposed, read back, and what is still to be asked. */
@ApplicationScoped
public class ImportForm {
    /** In the order in which they are best brought in: what a check looks back at comes first. */
    private static final List<String> KINDS = List.of(
            "animals",
            "calvings",
            "test-days",
            "milkings",
            "dry-offs",
            "departures",
            "services",
            "pregnancy-checks",
            "treatments",
            "tank-readings",
            "tank-pickups",
            "prices");

    private static final int EXAMPLES_SHOWN = 5;

    private final KindTables kinds;
    private final Remembered remembered;
    private final KnownAnimals animals;
    private final ImportQuestions questions;

    @Inject
    ImportForm(KindTables kinds, Remembered remembered, KnownAnimals animals, ImportQuestions questions) {
        this.questions = questions;
        this.kinds = kinds;
        this.remembered = remembered;
        this.animals = animals;
    }

    /** @throws Problem if there is no such kind */
    RecordKind<?> kind(String name) {
        return kinds.kind(name).orElseThrow(Problem::notFound);
    }

    /** What was said of such a file before, else what the headings propose. */
    FileMapping proposed(HerdRow herd, FileView view) {
        boolean hasHeader = !view.beginsWithData();
        List<String> headings = view.headings(hasHeader);
        return remembered.latest(herd, headings).orElseGet(() -> {
            String kind = KINDS.stream()
                    .max((one, other) -> Long.compare(
                            Questions.fitting(headings, kind(one).columns()),
                            Questions.fitting(headings, kind(other).columns())))
                    .orElseThrow();
            return fresh(herd, view, kind(kind).name(), hasHeader);
        });
    }

    /** What the headings propose for a kind, or what was said before. */
    FileMapping ofKind(HerdRow herd, FileView view, String kind, boolean hasHeader) {
        return remembered.of(herd, view.headings(hasHeader), kind).orElseGet(() -> fresh(herd, view, kind, hasHeader));
    }

    private FileMapping fresh(HerdRow herd, FileView view, String kind, boolean hasHeader) {
        List<String> columns =
                Questions.proposed(view.headings(hasHeader), kind(kind).columns());
        return new FileMapping(
                kind, columns, Map.of(), Optional.empty(), Optional.empty(), usualScheme(herd), "", hasHeader);
    }

    private String usualScheme(HerdRow herd) {
        return animals.page(herd, "", 1, false).stream()
                .flatMap(animal -> animal.identifiers.stream())
                .findFirst()
                .map(identifier -> identifier.scheme())
                .orElse("");
    }

    boolean isRemembered(HerdRow herd, FileView view, FileMapping mapping) {
        return remembered
                .of(herd, view.headings(mapping.hasHeader()), mapping.kind())
                .isPresent();
    }

    /** What the form says. */
    FileMapping read(FormFields form, FileView view) {
        List<String> columns = new ArrayList<>();
        for (int i = 0; i < view.looks().size(); i++) {
            columns.add(form.text("col." + i).orElse(""));
        }
        Map<String, FileUnit> units = new HashMap<>();
        columns.forEach(column -> form.text("unit." + column)
                .flatMap(FileUnit::of)
                .filter(FileUnit.ofColumn(column)::contains)
                .ifPresent(unit -> units.put(column, unit)));
        return new FileMapping(
                form.required("kind"),
                columns,
                units,
                form.text("decimal").map("comma"::equals),
                form.text("dates").flatMap(FileDates::of),
                form.text("scheme").orElse(""),
                form.text("source").orElse(""),
                form.text("header").map("yes"::equals).orElse(!view.beginsWithData()));
    }

    /** The same with what the file itself tells: the answers that stand chosen. */
    FileMapping answered(FileMapping mapping, List<ImportPages.Question> questions) {
        Map<String, String> chosen = new HashMap<>();
        questions.forEach(question -> question.choices().stream()
                .filter(ImportPages.Choice::isChosen)
                .forEach(choice -> chosen.put(question.name(), choice.value())));
        Map<String, FileUnit> units = new HashMap<>();
        mapping.columns()
                .forEach(column -> Optional.ofNullable(chosen.get("unit." + column))
                        .flatMap(FileUnit::of)
                        .ifPresent(unit -> units.put(column, unit)));
        return new FileMapping(
                mapping.kind(),
                mapping.columns(),
                units,
                Optional.ofNullable(chosen.get("decimal")).map("comma"::equals),
                Optional.ofNullable(chosen.get("dates")).flatMap(FileDates::of),
                mapping.scheme(),
                mapping.source(),
                mapping.hasHeader());
    }

    /** What must be said before the rows can be judged. */
    List<String> problems(FileMapping mapping, List<ImportPages.Question> questions) {
        List<String> problems = new ArrayList<>();
        RecordKind<?> kind = kind(mapping.kind());
        for (Column column : kind.columns()) {
            boolean isNeeded = column.name().equals("animal_id")
                    || kind instanceof DatedKind<?> dated && column.name().equals(dated.dayColumn());
            if (isNeeded && mapping.placeOf(column.name()) < 0) {
                problems.add(PageWords.with("import.needed", word(column.name())));
            }
        }
        mapping.columns().stream()
                .filter(column -> !column.isEmpty())
                .filter(column ->
                        mapping.columns().indexOf(column) != mapping.columns().lastIndexOf(column))
                .distinct()
                .forEach(column -> problems.add(PageWords.with("import.twice", word(column))));
        if (asksScheme(mapping) && mapping.scheme().isEmpty()) {
            problems.add(PageWords.word("import.noScheme"));
        }
        questions.stream()
                .filter(ImportPages.Question::isOpen)
                .forEach(question -> problems.add(PageWords.with("import.open", question.text())));
        return problems;
    }

    boolean asksScheme(FileMapping mapping) {
        return mapping.placeOf("animal_scheme") < 0
                && kind(mapping.kind()).columns().stream()
                        .anyMatch(column -> column.name().equals("animal_scheme"));
    }

    ImportPages.MapPage page(
            Shown shown, PendingFile file, FileMapping mapping, List<String> problems, boolean isRemembered) {
        FileView view = file.view().orElseThrow();
        List<String> headings = view.headings(mapping.hasHeader());
        List<ImportPages.ColumnLine> lines = new ArrayList<>();
        for (int place = 0; place < headings.size(); place++) {
            String chosen = mapping.columns().get(place);
            lines.add(new ImportPages.ColumnLine(
                    place,
                    headings.get(place),
                    String.join(" | ", view.looks().get(place).examples()),
                    Stream.concat(
                                    Stream.of(new ImportPages.Choice(
                                            "", PageWords.word("import.leftOut"), chosen.isEmpty())),
                                    kind(mapping.kind()).columns().stream()
                                            .map(column -> new ImportPages.Choice(
                                                    column.name(),
                                                    word(column.name()),
                                                    column.name().equals(chosen))))
                            .toList()));
        }
        return new ImportPages.MapPage(
                shown,
                file.id(),
                file.name(),
                view.rowsToTake(mapping.hasHeader()),
                isRemembered,
                RefusedRows.areHeadingsOfOne(headings),
                KINDS.stream()
                        .map(kind -> new ImportPages.Choice(
                                kind, PageWords.word("kind." + kind), kind.equals(mapping.kind())))
                        .toList(),
                lines,
                questions.of(shown.herd(), view, mapping),
                asksScheme(mapping),
                mapping.scheme(),
                mapping.source(),
                problems,
                view.examples(mapping.hasHeader()).stream()
                        .limit(EXAMPLES_SHOWN)
                        .toList());
    }

    /** A column in words, if there are some for it. */
    static String word(String column) {
        String plain = column.replace('_', ' ');
        return PageWords.find("column." + column)
                .orElse(plain.substring(0, 1).toUpperCase(Locale.ROOT) + plain.substring(1));
    }
}
