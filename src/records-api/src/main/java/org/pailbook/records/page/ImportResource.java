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
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.exchange.FormFile;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.upload.FileFault;
import org.pailbook.records.upload.FileMapping;
import org.pailbook.records.upload.FileView;
import org.pailbook.records.upload.PendingFile;
import org.pailbook.records.upload.PendingFiles;
import org.pailbook.records.upload.Remembered;

/** Bringing in a file: choose it, say what its columns are, see how its rows fare, take them. */
@Path("/pages/herds/{herd}/import")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class ImportResource {
    private final ImportDesk desk;
    private final PendingFiles files;
    private final ImportForm form;
    private final ImportQuestions questions;
    private final Remembered remembered;

    @Inject
    ImportResource(
            ImportDesk desk, PendingFiles files, ImportForm form, ImportQuestions questions, Remembered remembered) {
        this.desk = desk;
        this.files = files;
        this.form = form;
        this.questions = questions;
        this.remembered = remembered;
    }

    @GET
    @Operation(hidden = true)
    public Response getChoice(@PathParam("herd") String herdCode, @BeanParam PageQuery query) {
        HerdRow herd = desk.toRead(herdCode);
        return PageResource.html(desk.chooser(herd, query, ""));
    }

    @POST
    @Consumes(FormFile.MEDIA_TYPE)
    @Operation(hidden = true)
    public Response postFile(@PathParam("herd") String herdCode, InputStream body, @Context HttpHeaders headers)
            throws IOException {
        HerdRow herd = desk.toWrite(herdCode);
        try {
            PendingFile file = files.take(herd, desk.keyId(), body, headers.getHeaderString(HttpHeaders.CONTENT_TYPE));
            return PageResource.to(ImportDesk.address(herd, file, ""));
        } catch (FileFault.Unreadable unreadable) {
            return PageResource.html(desk.chooser(herd, new PageQuery(), words(unreadable)), PageResource.NOT_ACCEPTED);
        }
    }

    private static String words(FileFault.Unreadable unreadable) {
        String why = PageWords.word(unreadable.fault().wordKey());
        return unreadable.line() == 0 ? why : PageWords.with("import.faultAt", unreadable.line(), why);
    }

    @GET
    @Path("/{file}")
    @Operation(hidden = true)
    public Response getFile(
            @PathParam("herd") String herdCode, @PathParam("file") String fileId, @BeanParam PageQuery query)
            throws IOException {
        HerdRow herd = desk.toWrite(herdCode);
        Optional<PendingFile> file = desk.file(herd, fileId);
        if (file.isEmpty()) {
            return PageResource.html(desk.gone(herd), PageResource.GONE);
        }
        Shown shown = desk.shown(herd, query);
        if (file.get().view().isEmpty()) {
            return encoding(shown, file.get());
        }
        FileView view = file.get().view().get();
        FileMapping mapping = file.get().mapping().orElseGet(() -> form.proposed(herd, view));
        return map(shown, file.get(), mapping, List.of(), form.isRemembered(herd, view, mapping), 200);
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
        HerdRow herd = desk.toWrite(herdCode);
        Optional<PendingFile> found = desk.file(herd, fileId);
        if (found.isEmpty()) {
            return PageResource.html(desk.gone(herd), PageResource.GONE);
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
        List<ImportPages.Question> asked = questions.of(herd, view, said);
        List<String> problems = form.problems(said, asked);
        if (!problems.isEmpty()) {
            return map(shown, file, said, problems, false, PageResource.NOT_ACCEPTED);
        }
        FileMapping mapping = form.answered(said, asked);
        file.say(mapping);
        remembered.keep(herd, view.headings(mapping.hasHeader()), mapping, desk.keyId());
        return PageResource.to(desk.begin(herd, file, mapping, true));
    }

    private Response readIn(HerdRow herd, PendingFile file, String encoding) throws IOException {
        if (!PendingFile.encodings().contains(encoding)) {
            throw new Problem(ProblemCode.MALFORMED_FORM, "The field encoding names none of those to choose from.");
        }
        try {
            file.read(Charset.forName(encoding));
            return PageResource.to(ImportDesk.address(herd, file, ""));
        } catch (FileFault.Unreadable unreadable) {
            return PageResource.html(desk.chooser(herd, new PageQuery(), words(unreadable)), PageResource.NOT_ACCEPTED);
        }
    }
}
