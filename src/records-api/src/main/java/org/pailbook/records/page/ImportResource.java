package org.pailbook.records.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.exchange.FormFile;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.upload.FileFault;
import org.pailbook.records.upload.FileJob;
import org.pailbook.records.upload.FileJobs;
import org.pailbook.records.upload.FileMapping;
import org.pailbook.records.upload.FileView;
import org.pailbook.records.upload.PendingFile;
import org.pailbook.records.upload.PendingFiles;
import org.pailbook.records.upload.Questions;
import org.pailbook.records.upload.Remembered;

/** Bringing in a file: choose it, say what its columns are, see how its rows fare, take them. */
@Path("/pages/herds/{herd}/import")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class ImportResource {
    private static final int GONE = 410;
    /** A short file is through before the page is shown; nobody need look twice then. */
    private static final int LOOKS_BEFORE_ANSWER = 40;

    private static final long BETWEEN_LOOKS_NANOS = 50_000_000;

    private final HerdAccess access;
    private final Caller caller;
    private final PendingFiles files;
    private final FileJobs jobs;
    private final ImportForm form;
    private final Remembered remembered;
    private final PageDesk desk;

    @Inject
    ImportResource(
            HerdAccess access,
            Caller caller,
            PendingFiles files,
            FileJobs jobs,
            ImportForm form,
            Remembered remembered,
            PageDesk desk) {
        this.access = access;
        this.caller = caller;
        this.files = files;
        this.jobs = jobs;
        this.form = form;
        this.remembered = remembered;
        this.desk = desk;
    }

    @GET
    @Operation(hidden = true)
    public Response getChoice(@PathParam("herd") String herdCode, @BeanParam PageQuery query) {
        HerdRow herd = access.toRead(herdCode);
        return choice(herd, query, "", 200);
    }

    private Response choice(HerdRow herd, PageQuery query, String fault, int status) {
        return PageResource.html(
                Templates.importFile(new ImportPages.ChoosePage(desk.shown(herd, query), fault)), status);
    }

    @POST
    @Consumes(FormFile.MEDIA_TYPE)
    @Operation(hidden = true)
    public Response postFile(@PathParam("herd") String herdCode, InputStream body, @Context HttpHeaders headers)
            throws IOException {
        HerdRow herd = access.toWrite(herdCode);
        try {
            PendingFile file =
                    files.take(herd, caller.keyId(), body, headers.getHeaderString(HttpHeaders.CONTENT_TYPE));
            return to(herd, file, "");
        } catch (FileFault.Unreadable unreadable) {
            return choice(herd, new PageQuery(), words(unreadable), PageResource.NOT_ACCEPTED);
        }
    }

    private static String words(FileFault.Unreadable unreadable) {
        String why = PageWords.word(unreadable.fault().wordKey());
        return unreadable.line() == 0 ? why : PageWords.with("import.faultAt", unreadable.line(), why);
    }

    private static Response to(HerdRow herd, PendingFile file, String rest) {
        return PageResource.to("/pages/herds/" + herd.code + "/import/" + file.id() + rest);
    }

    @GET
    @Path("/{file}")
    @Operation(hidden = true)
    public Response getFile(
            @PathParam("herd") String herdCode, @PathParam("file") String fileId, @BeanParam PageQuery query)
            throws IOException {
        HerdRow herd = access.toWrite(herdCode);
        Optional<PendingFile> file = files.of(herd, caller.keyId(), fileId);
        if (file.isEmpty()) {
            return gone(herd);
        }
        Shown shown = desk.shown(herd, query);
        if (file.get().view().isEmpty()) {
            return encoding(shown, file.get());
        }
        FileView view = file.get().view().get();
        FileMapping mapping = file.get().mapping().orElseGet(() -> form.proposed(herd, view));
        return map(shown, file.get(), mapping, List.of(), form.isRemembered(herd, view, mapping), 200);
    }

    private Response gone(HerdRow herd) {
        return choice(herd, new PageQuery(), PageWords.word("import.gone"), GONE);
    }

    private static Response encoding(Shown shown, PendingFile file) throws IOException {
        List<ImportPages.Choice> encodings = new ArrayList<>();
        for (String name : PendingFile.encodings()) {
            encodings.add(new ImportPages.Choice(
                    name,
                    PageWords.with(
                            "import.encoding",
                            PageWords.word("encoding." + name),
                            file.lineToJudge(Charset.forName(name))),
                    false));
        }
        return PageResource.html(
                Templates.importEncoding(new ImportPages.EncodingPage(shown, file.id(), file.name(), encodings)));
    }

    private Response map(
            Shown shown,
            PendingFile file,
            FileMapping mapping,
            List<String> problems,
            boolean isRemembered,
            int status) {
        return PageResource.html(Templates.importMap(form.page(shown, file, mapping, problems, isRemembered)), status);
    }

    /** What the columns mean, or in which encoding the file is. */
    @POST
    @Path("/{file}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response postMeaning(@PathParam("herd") String herdCode, @PathParam("file") String fileId, InputStream body)
            throws IOException {
        HerdRow herd = access.toWrite(herdCode);
        Optional<PendingFile> found = files.of(herd, caller.keyId(), fileId);
        if (found.isEmpty()) {
            return gone(herd);
        }
        PendingFile file = found.get();
        FormFields fields = FormFields.read(body);
        if (file.view().isEmpty()) {
            return readIn(herd, file, fields.required("encoding"));
        }
        FileView view = file.view().get();
        FileMapping said = form.read(fields, view);
        form.kind(said.kind());
        Shown shown = desk.shown(herd, new PageQuery());
        if (!fields.has("check")) {
            boolean isOther = !fields.text("kind").equals(fields.text("kindShown"));
            FileMapping mapping = isOther ? form.ofKind(herd, view, said.kind(), said.hasHeader()) : said;
            return map(shown, file, mapping, List.of(), isOther && form.isRemembered(herd, view, mapping), 200);
        }
        List<ImportPages.Question> questions = form.questions(herd, view, said);
        List<String> problems = form.problems(said, questions);
        if (!problems.isEmpty()) {
            return map(shown, file, said, problems, false, PageResource.NOT_ACCEPTED);
        }
        FileMapping mapping = form.answered(said, questions);
        file.say(mapping);
        remembered.keep(herd, view.headings(mapping.hasHeader()), mapping, caller.keyId());
        return begin(herd, file, mapping, true);
    }

    private Response readIn(HerdRow herd, PendingFile file, String encoding) throws IOException {
        if (!PendingFile.encodings().contains(encoding)) {
            throw new Problem(ProblemCode.MALFORMED_FORM, "The field encoding names none of those to choose from.");
        }
        try {
            file.read(Charset.forName(encoding));
            return to(herd, file, "");
        } catch (FileFault.Unreadable unreadable) {
            return choice(herd, new PageQuery(), words(unreadable), PageResource.NOT_ACCEPTED);
        }
    }

    private Response begin(HerdRow herd, PendingFile file, FileMapping mapping, boolean isTrial) {
        jobs.begin(file, form.kind(mapping.kind()), herd, caller.keyId(), isTrial);
        for (int look = 0;
                look < LOOKS_BEFORE_ANSWER
                        && file.job().filter(FileJob::isRunning).isPresent();
                look++) {
            LockSupport.parkNanos(BETWEEN_LOOKS_NANOS);
        }
        return to(herd, file, "/rows");
    }

    /** Takes the rows. */
    @POST
    @Path("/{file}/rows")
    @Operation(hidden = true)
    public Response postRows(@PathParam("herd") String herdCode, @PathParam("file") String fileId) {
        HerdRow herd = access.toWrite(herdCode);
        Optional<PendingFile> file = files.of(herd, caller.keyId(), fileId);
        return file.isEmpty() || file.get().mapping().isEmpty()
                ? gone(herd)
                : begin(herd, file.get(), file.get().mapping().get(), false);
    }

    @GET
    @Path("/{file}/rows")
    @Operation(hidden = true)
    public Response getRows(
            @PathParam("herd") String herdCode, @PathParam("file") String fileId, @BeanParam PageQuery query) {
        HerdRow herd = access.toWrite(herdCode);
        Optional<PendingFile> file = files.of(herd, caller.keyId(), fileId);
        if (file.isEmpty() || file.get().job().isEmpty()) {
            return gone(herd);
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
        HerdRow herd = access.toWrite(herdCode);
        FileJob job =
                files.of(herd, caller.keyId(), fileId).flatMap(PendingFile::job).orElseThrow(Problem::notFound);
        return Response.ok(
                        "{\"done\":%d,\"total\":%d,\"running\":%b}".formatted(job.done(), job.total(), job.isRunning()),
                        MediaType.APPLICATION_JSON)
                .build();
    }
}
