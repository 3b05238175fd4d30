package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.Caller;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.intake.RecordIntake;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.intake.RowOutcome;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemBody;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.problem.RequestId;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.LimitedBody;
import org.pailbook.records.wire.MergePatch;
import org.pailbook.records.wire.StrictJson;

/** Takes posted bodies to the intake and makes the HTTP answers of its outcomes. */
@ApplicationScoped
public class RecordDesk {
    private final RecordIntake intake;
    private final BulkIntake bulk;
    private final OnceOnly once;
    private final BulkTurns turns;
    private final WriteLog log;
    private final Caller caller;
    private final RoutingContext routing;

    @Inject
    RecordDesk(
            RecordIntake intake,
            BulkIntake bulk,
            OnceOnly once,
            BulkTurns turns,
            WriteLog log,
            Caller caller,
            RoutingContext routing) {
        this.turns = turns;
        this.log = log;
        this.routing = routing;
        this.intake = intake;
        this.bulk = bulk;
        this.once = once;
        this.caller = caller;
    }

    /** The object a request holds, if it says it is JSON. */
    public static ObjectNode readObject(InputStream body, HttpHeaders headers) {
        return readObject(body, headers, LimitedBody.ONE_RECORD);
    }

    /** The same with a limit of its own. */
    public static ObjectNode readObject(InputStream body, HttpHeaders headers, long mostBytes) {
        return readObject(body, headers, mostBytes, BulkIntake.JSON);
    }

    /** The object a request holds, if it says it is of that media type. */
    static ObjectNode readObject(InputStream body, HttpHeaders headers, long mostBytes, String wanted) {
        requirePlain(headers);
        String mediaType = BulkIntake.mediaType(headers.getHeaderString(HttpHeaders.CONTENT_TYPE));
        if (!mediaType.equals(wanted)) {
            // the media types read are in a header too: RFC 9110, section 15.5.16, for patches RFC 5789, section 2.2
            // (from memory)
            throw new Problem(ProblemCode.UNSUPPORTED_MEDIA_TYPE, "Send " + wanted + ".")
                    .withHeader(wanted.equals(MergePatch.MEDIA_TYPE) ? "Accept-Patch" : HttpHeaders.ACCEPT, wanted);
        }
        return StrictJson.object(new LimitedBody(body, mostBytes));
    }

    /** What kind of body a request says it holds, one of two. */
    public static boolean isTable(HttpHeaders headers) {
        requirePlain(headers);
        String mediaType = BulkIntake.mediaType(headers.getHeaderString(HttpHeaders.CONTENT_TYPE));
        if (!mediaType.equals(BulkIntake.JSON) && !mediaType.equals(BulkIntake.CSV)) {
            throw new Problem(ProblemCode.UNSUPPORTED_MEDIA_TYPE, "Send application/json or text/csv.")
                    .withHeader(HttpHeaders.ACCEPT, BulkIntake.JSON + ", " + BulkIntake.CSV);
        }
        return mediaType.equals(BulkIntake.CSV);
    }

    /** One record: 201 if it is new, 200 if it was there, 422 with every fault if it was refused. */
    public <E extends StoredRecord, T> RestResponse<PostedAnswer<T>> post(
            RecordKind<E> kind, HerdRow herd, InputStream body, HttpHeaders headers, Function<E, T> view) {
        return once.single(headers, body, counted -> postOnce(kind, herd, counted, headers, view));
    }

    private <E extends StoredRecord, T> RestResponse<PostedAnswer<T>> postOnce(
            RecordKind<E> kind, HerdRow herd, InputStream body, HttpHeaders headers, Function<E, T> view) {
        PostedRow row = PostedRow.single(readObject(body, headers));
        RowOutcome<E> outcome = intake.takeOne(kind, herd, caller.keyId(), row);
        log.single(kind.name(), outcome);
        if (outcome.outcome() == Outcome.REFUSED) {
            throw refusal(outcome.findings());
        }
        E record = outcome.record();
        PostedAnswer<T> answer = answer(outcome, view);
        RestResponse.ResponseBuilder<PostedAnswer<T>> response = outcome.outcome() == Outcome.CREATED
                ? RestResponse.ResponseBuilder.<PostedAnswer<T>>created(
                                URI.create("/v1/herds/" + herd.code + "/" + kind.name() + "/" + record.id))
                        .entity(answer)
                : RestResponse.ResponseBuilder.ok(answer);
        return response.header(HttpHeaders.ETAG, Precondition.tagOf(record.version))
                .build();
    }

    static <E extends StoredRecord, T> PostedAnswer<T> answer(RowOutcome<E> outcome, Function<E, T> view) {
        E record = outcome.record();
        return new PostedAnswer<>(
                record.id,
                outcome.outcome(),
                record.version,
                outcome.daysInMilk(),
                view.apply(record),
                outcome.findings());
    }

    /** Many records: 200 with counts and row results, also if every row was refused; 422 if all-or-nothing was asked and failed. */
    public <E extends StoredRecord> Response postMany(
            RecordKind<E> kind, HerdRow herd, BulkQuery query, InputStream body, HttpHeaders headers) {
        return once.many(headers, body, counted -> postManyOnce(kind, herd, query, counted, headers));
    }

    private <E extends StoredRecord> Response postManyOnce(
            RecordKind<E> kind, HerdRow herd, BulkQuery query, InputStream body, HttpHeaders headers) {
        requirePlain(headers);
        BulkOptions options = query.options();
        String contentType = headers.getHeaderString(HttpHeaders.CONTENT_TYPE);
        String mediaType = BulkIntake.mediaType(contentType);
        try (BulkTurns.Turn turn = turns.take()) {
            InputStream rows = body;
            if (mediaType.equals(FormFile.MEDIA_TYPE)) {
                FormFile file = new FormFile(body, contentType);
                mediaType = file.mediaType();
                rows = file;
            }
            BulkReport report = bulk.take(kind, herd, caller.keyId(), mediaType, rows, options);
            boolean rejected = options.atomic() && report.count(Outcome.REFUSED) > 0;
            log.many(kind.name(), WriteLog.countsOf(report), !rejected && !options.dryRun());
            Map<String, Object> first = new LinkedHashMap<>();
            if (rejected) {
                first.put("type", "/problems/" + ProblemCode.BATCH_REJECTED.code());
                first.put("title", ProblemCode.BATCH_REJECTED.title());
                first.put("status", ProblemCode.BATCH_REJECTED.status());
                first.put("code", ProblemCode.BATCH_REJECTED.code());
                first.put("detail", report.count(Outcome.REFUSED) + " rows have errors; nothing was stored.");
                first.put("instance", routing.request().path());
                first.put("requestId", RequestId.of(routing));
            }
            StreamingOutput out = stream -> {
                try (report) {
                    report.writeTo(stream, options.dryRun(), options.atomic(), first);
                }
            };
            return Response.status(rejected ? ProblemCode.BATCH_REJECTED.status() : Response.Status.OK.getStatusCode())
                    .type(rejected ? ProblemBody.MEDIA_TYPE : BulkIntake.JSON)
                    .entity(out)
                    .build();
        } catch (IOException spoolFailed) {
            throw BulkReport.spoolFailed(spoolFailed);
        }
    }

    private static void requirePlain(HttpHeaders headers) {
        String encoding = headers.getHeaderString(HttpHeaders.CONTENT_ENCODING);
        if (encoding != null && !encoding.equalsIgnoreCase("identity")) {
            throw new Problem(ProblemCode.UNSUPPORTED_MEDIA_TYPE, "Send the body without Content-Encoding.");
        }
    }

    static Problem refusal(List<FindingView> findings) {
        List<Fault> faults = findings.stream()
                .filter(FindingView::isError)
                .map(FindingView::asFault)
                .toList();
        if (faults.stream().allMatch(fault -> fault.code().equals("unknown-animal"))) {
            return new Problem(ProblemCode.UNKNOWN_ANIMAL, "Post the animal first.", faults);
        }
        if (faults.stream().allMatch(fault -> fault.code().equals("key-conflict"))) {
            return new Problem(ProblemCode.KEY_CONFLICT, "The keys belong to different records.", faults);
        }
        return Problem.validation(faults);
    }
}
