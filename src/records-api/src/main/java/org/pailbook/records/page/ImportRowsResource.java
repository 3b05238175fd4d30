package org.pailbook.records.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.exchange.CsvTable;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.upload.FileJob;
import org.pailbook.records.upload.FileMapping;
import org.pailbook.records.upload.PendingFile;
import org.pailbook.records.upload.Questions;
import org.pailbook.records.upload.RefusedRows;

/** How the rows of a file fare: judged, taken, how far it is, and which were refused. */
@Path("/pages/herds/{herd}/import")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class ImportRowsResource {
    private final ImportDesk desk;
    private final ImportForm form;

    @Inject
    ImportRowsResource(ImportDesk desk, ImportForm form) {
        this.desk = desk;
        this.form = form;
    }

    /** Takes the rows. */
    @POST
    @Path("/{file}/rows")
    @Operation(hidden = true)
    public Response postRows(@PathParam("herd") String herdCode, @PathParam("file") String fileId) {
        HerdRow herd = desk.toWrite(herdCode);
        Optional<PendingFile> file = desk.file(herd, fileId);
        return file.isEmpty() || file.get().mapping().isEmpty()
                ? PageResource.html(desk.gone(herd), PageResource.GONE)
                : PageResource.to(
                        desk.begin(herd, file.get(), file.get().mapping().get(), false));
    }

    @GET
    @Path("/{file}/rows")
    @Operation(hidden = true)
    public Response getRows(
            @PathParam("herd") String herdCode, @PathParam("file") String fileId, @BeanParam PageQuery query) {
        HerdRow herd = desk.toWrite(herdCode);
        Optional<PendingFile> file = desk.file(herd, fileId);
        if (file.isEmpty() || file.get().job().isEmpty()) {
            return PageResource.html(desk.gone(herd), PageResource.GONE);
        }
        FileMapping mapping = file.get().mapping().orElseThrow();
        List<List<String>> preview = Questions.preview(
                file.get().view().orElseThrow(),
                mapping,
                form.kind(mapping.kind()).columns(),
                herd.zone());
        ImportPages.JobPage page = ImportPages.JobPage.of(
                desk.shown(herd, query),
                file.get(),
                file.get().job().get(),
                PageWords.word("kind." + mapping.kind()),
                heads(mapping, preview.get(0)),
                preview.subList(1, preview.size()));
        return PageResource.htmlWithScript(Templates.importRows(page), 200);
    }

    /** Our columns in words, with the unit they were converted from. */
    private static List<String> heads(FileMapping mapping, List<String> columns) {
        return columns.stream()
                .map(column -> Optional.ofNullable(mapping.units().get(column))
                        .filter(unit -> !unit.isOurs())
                        .map(FileUnit::wireName)
                        .map(unit -> PageWords.with(
                                "import.converted", ImportForm.word(column), PageWords.word("unit." + unit)))
                        .orElseGet(() -> ImportForm.word(column)))
                .toList();
    }

    /** How far it is, for the page's script. */
    @GET
    @Path("/{file}/progress")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(hidden = true)
    public Response getProgress(@PathParam("herd") String herdCode, @PathParam("file") String fileId) {
        HerdRow herd = desk.toWrite(herdCode);
        FileJob job = desk.file(herd, fileId).flatMap(PendingFile::job).orElseThrow(Problem::notFound);
        return Response.ok(
                        "{\"done\":%d,\"total\":%d,\"running\":%b}".formatted(job.done(), job.total(), job.isRunning()),
                        MediaType.APPLICATION_JSON)
                .build();
    }

    /** The refused rows, to be mended and brought in again. */
    @GET
    @Path("/{file}/refused.csv")
    @Produces({CsvTable.MEDIA_TYPE, MediaType.WILDCARD})
    @Operation(hidden = true)
    public Response getRefused(@PathParam("herd") String herdCode, @PathParam("file") String fileId) {
        HerdRow herd = desk.toWrite(herdCode);
        PendingFile file = desk.file(herd, fileId).orElseThrow(Problem::notFound);
        // taken now: while the table is written, another job of the file may begin
        Map<Integer, String> refused = file.job()
                .filter(job -> !job.isRunning())
                .orElseThrow(Problem::notFound)
                .refused();
        FileMapping mapping = file.mapping().orElseThrow(Problem::notFound);
        StreamingOutput rows = out -> RefusedRows.write(file, mapping, refused, out);
        return Response.ok(rows, CsvTable.MEDIA_TYPE)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + herd.code + "-refused-rows.csv\"")
                .build();
    }
}
