package org.pailbook.records.calculate;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.records.wire.FigureView.WarningView;

/** Learns from a request's history, then projects and writes one lactation after the other. */
final class ProjectionsWriting {
    private static final String[] HEADER = {
        "animal",
        "parity",
        "calving_date",
        "days_in_milk",
        "tests",
        "projected_305_milk_kg",
        "projected_305_milk_kg_low80",
        "projected_305_milk_kg_high80",
        "projected_305_milk_kg_low95",
        "projected_305_milk_kg_high95",
        "reliability",
        "projected_305_fat_kg",
        "projected_305_protein_kg",
        "so_far_milk_kg",
        "method",
        "method_version",
        "findings"
    };

    private final ProjectionsRequest request;
    private final HerdKnowledge herd;

    ProjectionsWriting(ProjectionsRequest request) {
        this.request = request;
        LocalDate latest = request.asOf()
                .orElseGet(() -> request.history().stream()
                        .map(PostedHerdLactation::latestDay)
                        .max(LocalDate::compareTo)
                        .orElse(LocalDate.EPOCH));
        this.herd = HerdKnowledge.learn(
                request.history().stream().map(PostedHerdLactation::toLibrary).toList(), latest);
    }

    void writeJson(ObjectMapper json, OutputStream out, boolean explain, Instant computedAt) throws IOException {
        try (JsonGenerator answer = json.createGenerator(out)) {
            answer.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            answer.writeStartObject();
            if (request.asOf().isPresent()) {
                answer.writeStringField("asOf", request.asOf().get().toString());
            }
            answer.writeStringField("computedAt", computedAt.toString());
            answer.writeObjectField(
                    "learnedFrom",
                    new ProjectionsView.LearnedFromView(
                            herd.lactations(),
                            herd.testDays(),
                            herd.completedLactations(),
                            herd.isCalibratedByHerd() ? "herd" : "shipped"));
            answer.writeObjectField("warnings", warnings());
            answer.writeArrayFieldStart("results");
            for (PostedHerdLactation posted : request.lactations()) {
                answer.writeObject(
                        ProjectionsView.ResultView.of(ProjectedLactation.of(posted, herd, request.asOf()), explain));
            }
            answer.writeEndArray();
            answer.writeEndObject();
        }
    }

    private List<WarningView> warnings() {
        int later = request.asOf()
                .map(day -> request.history().stream()
                        .mapToInt(one -> one.testsAfter(day))
                        .sum())
                .orElse(0);
        return later == 0
                ? List.of()
                : List.of(WarningView.of(ProjectedLactation.testsAfter(later).withField("history")));
    }

    void writeCsv(OutputStream out) throws IOException {
        // not closed: the stream is the server's
        BufferedWriter text = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        CSVPrinter table = new CSVPrinter(
                text, CSVFormat.RFC4180.builder().setHeader(HEADER).get());
        for (PostedHerdLactation posted : request.lactations()) {
            table.printRecord(row(ProjectedLactation.of(posted, herd, request.asOf())));
        }
        text.flush();
    }

    private static Object[] row(ProjectedLactation one) {
        Interval narrow = one.milk().interval(0.80).orElseThrow();
        Interval wide = one.milk().interval(0.95).orElseThrow();
        return new Object[] {
            harmless(one.posted().animal()),
            one.posted().lactation().parity(),
            one.posted().lactation().calvingDate(),
            one.daysInMilk() < 0 ? null : one.daysInMilk(),
            one.projection().tests(),
            kg(one.milk()),
            decimal(narrow.low()),
            decimal(narrow.high()),
            decimal(wide.low()),
            decimal(wide.high()),
            String.format(
                    Locale.ROOT,
                    "%.4f",
                    one.projection().reliabilityShare(LactationTrait.MILK).orElseThrow()),
            kg(one.fat()),
            kg(one.protein()),
            decimal(one.projection().producedKg()),
            one.method().id(),
            one.method().version(),
            one.findings().stream()
                    .map(Finding::code)
                    .map(code -> code.code())
                    .distinct()
                    .collect(Collectors.joining(" "))
        };
    }

    /** A text that a spreadsheet would take for a formula gets an apostrophe; numbers stay (OWASP, CSV injection). */
    private static String harmless(String text) {
        boolean isFormula = "=+-@".indexOf(text.charAt(0)) >= 0 && !text.matches("[+-]?[0-9.]+");
        return isFormula ? "'" + text : text;
    }

    private static String kg(Figure figure) {
        return decimal(figure.orThrow());
    }

    /** Grams: finer than any of these figures is known. */
    private static String decimal(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
