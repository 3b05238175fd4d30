package org.pailbook.records.report;

import io.quarkus.arc.All;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.exchange.ClocksQuery;
import org.pailbook.records.exchange.ComputedDesk;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.Page;

/** Tables of a herd over HTTP, for spreadsheet programs and whatever else reads a table from an address. */
@Path("/v1/herds/{herd}/reports")
@Tag(name = "Reports")
public class ReportResource {
    private static final String SEMICOLON = "semicolon";

    private final HerdAccess access;
    private final ComputedDesk desk;
    private final List<Report<?>> reports;
    private final Clock clock;

    @Inject
    ReportResource(HerdAccess access, ComputedDesk desk, @All List<Report<?>> reports, Clock clock) {
        this.access = access;
        this.desk = desk;
        this.reports =
                reports.stream().sorted(Comparator.comparing(Report::name)).toList();
        this.clock = clock;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(operationId = "listReports", summary = "The reports of a herd, their columns, units and meaning")
    public Page<ReportView> listReports(@PathParam("herd") String herdCode) {
        HerdRow herd = access.toRead(herdCode);
        LocalDate today = LocalDate.ofInstant(clock.instant(), herd.zone());
        return new Page<>(
                reports.stream()
                        .map(report -> ReportView.of(report, herd.code, today))
                        .toList(),
                null);
    }

    /** Answers whatever the caller says it accepts: a spreadsheet program asks for web pages or images and takes the table gladly. */
    @GET
    @Path("/{file}")
    @Produces(MediaType.WILDCARD)
    @Operation(operationId = "getReport", summary = "A report as .csv, .json or .xlsx")
    @APIResponse(
            responseCode = "200",
            description = "The table; its first rows may be on their way before its last ones are computed",
            content = {
                @Content(mediaType = "text/csv", schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = "application/json", schema = @Schema(type = SchemaType.OBJECT)),
                @Content(
                        mediaType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
                        schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    @APIResponse(responseCode = "304", description = "Nothing of the herd has changed since the ETag that was sent")
    public Response getReport(
            @PathParam("herd") String herdCode,
            @PathParam("file") @Parameter(description = "Name and form, test-days.csv") String file,
            @BeanParam ClocksQuery clocks,
            @QueryParam("locale")
                    @Parameter(
                            description =
                                    "semicolon: CSV with semicolons and decimal commas, where spreadsheet programs want them",
                            example = "semicolon")
                    String locale,
            @Context HttpHeaders headers) {
        int dot = file.lastIndexOf('.');
        Optional<ReportForm> form = ReportForm.ofExtension(file.substring(dot + 1));
        Optional<Report<?>> report = reports.stream()
                .filter(one -> dot > 0 && one.name().equals(file.substring(0, dot)))
                .findFirst();
        RestResponse<Made> found = desk.answerAnew(herdCode, clocks, headers, known -> {
            if (form.isEmpty() || report.isEmpty()) {
                throw new Problem(
                        ProblemCode.NOT_FOUND,
                        "There is no such report; /v1/herds/" + known.herd().code
                                + "/reports lists them, each as .csv, .json and .xlsx.");
            }
            boolean isDecimalComma = isDecimalComma(locale, form.get());
            ReportRun<?> run = new ReportRun<>(report.get(), known.herd(), known.asOf());
            return new Made(
                    stream -> form.get().write(run, isDecimalComma, stream),
                    form.get().mediaType(),
                    "inline; filename=\"%s-%s-%s.%s\""
                            .formatted(
                                    known.herd().code,
                                    report.get().name(),
                                    known.asOf().day(),
                                    form.get().extension()));
        });
        Response.ResponseBuilder answer = Response.status(found.getStatus())
                .header(HttpHeaders.ETAG, found.getHeaders().getFirst(HttpHeaders.ETAG))
                .header(HttpHeaders.CACHE_CONTROL, "private, no-cache");
        if (found.getEntity() == null) {
            return answer.build();
        }
        Made made = found.getEntity();
        return answer.type(made.mediaType())
                .header(HttpHeaders.CONTENT_DISPOSITION, made.disposition())
                .entity(made.rows())
                .build();
    }

    /** A report that can be written. */
    private record Made(StreamingOutput rows, String mediaType, String disposition) {}

    private static boolean isDecimalComma(String locale, ReportForm form) {
        if (locale == null) {
            return false;
        }
        if (!locale.equals(SEMICOLON) || form != ReportForm.CSV) {
            throw Problem.badParameter("locale", "expected semicolon, and only for .csv", locale);
        }
        return true;
    }
}
