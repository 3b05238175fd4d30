package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntPredicate;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.Caller;
import org.pailbook.records.intake.Edit;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.intake.RecordAmendment;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.intake.RowOutcome;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.SupersededVersionRow;
import org.pailbook.records.store.Versions;
import org.pailbook.records.wire.Action;
import org.pailbook.records.wire.LimitedBody;
import org.pailbook.records.wire.MergePatch;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;
import org.pailbook.records.wire.VersionView;

/** What is asked of one record known by its id: to be shown, replaced, patched, withdrawn, and what it was before. */
@ApplicationScoped
public class VersionDesk {
    private final RecordAmendment amendment;
    private final Versions versions;
    private final WriteLog log;
    private final Caller caller;

    @Inject
    VersionDesk(RecordAmendment amendment, Versions versions, WriteLog log, Caller caller) {
        this.amendment = amendment;
        this.versions = versions;
        this.log = log;
        this.caller = caller;
    }

    /** The record with its version as entity tag, or 304 if the caller has that version. */
    public <E extends StoredRecord, T> RestResponse<StoredView<T>> show(
            E record, Function<E, T> view, HttpHeaders headers) {
        String tag = Precondition.tagOf(record.version);
        if (Precondition.isKnown(headers, tag)) {
            return RestResponse.ResponseBuilder.<StoredView<T>>create(Response.Status.NOT_MODIFIED)
                    .header(HttpHeaders.ETAG, tag)
                    .build();
        }
        return RestResponse.ResponseBuilder.ok(stored(record, view))
                .header(HttpHeaders.ETAG, tag)
                .build();
    }

    /** The record beside its id, version and time. */
    static <E extends StoredRecord, T> StoredView<T> stored(E record, Function<E, T> view) {
        return StoredView.of(record.id, record.version, record.recordedAt, record.withdrawn, view.apply(record));
    }

    /** Another content for the record, whole. */
    public <E extends StoredRecord, T> RestResponse<PostedAnswer<T>> replace(
            RecordKind<E> kind, HerdRow herd, String id, InputStream body, HttpHeaders headers, Function<E, T> view) {
        IntPredicate expected = Precondition.ofChange(headers);
        ObjectNode content = RecordDesk.readObject(body, headers);
        return change(kind, herd, id, expected, Edit.whole(content), view);
    }

    /** The same content but for the members named. */
    public <E extends StoredRecord, T> RestResponse<PostedAnswer<T>> patch(
            RecordKind<E> kind, HerdRow herd, String id, InputStream body, HttpHeaders headers, Function<E, T> view) {
        IntPredicate expected = Precondition.ofChange(headers);
        MergePatch patch = readPatch(body, headers);
        return change(kind, herd, id, expected, Edit.merging(patch), view);
    }

    /** The patch a request holds, if it says that it is one. */
    public static MergePatch readPatch(InputStream body, HttpHeaders headers) {
        return new MergePatch(RecordDesk.readObject(body, headers, LimitedBody.ONE_RECORD, MergePatch.MEDIA_TYPE));
    }

    private <E extends StoredRecord, T> RestResponse<PostedAnswer<T>> change(
            RecordKind<E> kind, HerdRow herd, String id, IntPredicate expected, Edit edit, Function<E, T> view) {
        requireId(id);
        RowOutcome<E> outcome = amendment.change(kind, herd, caller.keyId(), id, expected, edit);
        log.single(kind.name(), outcome);
        if (outcome.outcome() == Outcome.REFUSED) {
            throw RecordDesk.refusal(outcome.findings());
        }
        return RestResponse.ResponseBuilder.ok(RecordDesk.answer(outcome, view))
                .header(HttpHeaders.ETAG, Precondition.tagOf(outcome.record().version))
                .build();
    }

    /** Takes the record out of force; the answer shows what it was. */
    public <E extends StoredRecord, T> RestResponse<PostedAnswer<T>> withdraw(
            RecordKind<E> kind, HerdRow herd, String id, HttpHeaders headers, Function<E, T> view) {
        IntPredicate expected = Precondition.ofChange(headers);
        requireId(id);
        E record = amendment.withdraw(kind, herd, caller.keyId(), id, expected);
        log.many(kind.name(), Map.of(Outcome.WITHDRAWN, 1), true);
        return RestResponse.ResponseBuilder.ok(new PostedAnswer<>(
                        record.id, Outcome.WITHDRAWN, record.version, null, view.apply(record), List.of()))
                .header(HttpHeaders.ETAG, Precondition.tagOf(record.version))
                .build();
    }

    /**
     * Every version of a record, first to last.
     *
     * @param last the last one to be shown, read before this is called
     */
    public <E extends StoredRecord, T> Page<VersionView<T>> history(RecordKind<E> kind, E last, Function<E, T> view) {
        List<E> all = new ArrayList<>();
        for (SupersededVersionRow replaced : versions.replaced(last.herdId, last.id)) {
            if (replaced.version < last.version) {
                all.add(kind.restore(replaced));
            }
        }
        all.add(last);
        List<VersionView<T>> views = new ArrayList<>();
        boolean wasWithdrawn = false;
        for (E version : all) {
            views.add(new VersionView<>(
                    version.version,
                    version.recordedAt.toString(),
                    version.recordedBy,
                    version.source,
                    Action.of(version.version, version.withdrawn, wasWithdrawn),
                    view.apply(version)));
            wasWithdrawn = version.withdrawn;
        }
        return new Page<>(views, null);
    }

    private static void requireId(String id) {
        if (!RecordIds.isId(id)) {
            throw Problem.notFound();
        }
    }
}
