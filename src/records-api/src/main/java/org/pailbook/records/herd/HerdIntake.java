package org.pailbook.records.herd;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import org.pailbook.records.intake.Edit;
import org.pailbook.records.intake.NewHerds;
import org.pailbook.records.intake.RecordAmendment;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.ChangeTurn;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.store.SupersededVersionRow;
import org.pailbook.records.store.WriteGate;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** Makes herds, and gives them another name or zone. */
@ApplicationScoped
public class HerdIntake implements NewHerds {
    private static final int LONGEST_NAME = 200;
    private static final Set<String> ZONES = ZoneId.getAvailableZoneIds();

    private final WriteGate gate;
    private final Clock clock;

    @Inject
    HerdIntake(WriteGate gate, Clock clock) {
        this.gate = gate;
        this.clock = clock;
    }

    @Override
    public HerdRow make(ObjectNode body, String writtenBy) {
        return take(body, writtenBy).herd();
    }

    /** A herd, and whether this request made it. */
    public record Taken(HerdRow herd, boolean isNew) {}

    /**
     * Makes the herd; the same herd again changes nothing.
     *
     * @throws Problem if the body is wrong, or another herd has the code
     */
    public Taken take(ObjectNode body, String writtenBy) {
        HerdRow posted = read(body, Set.of());
        posted.recordedBy = writtenBy;
        return gate.write(session -> {
            Optional<HerdRow> there = session
                    .createSelectionQuery("from HerdRow where code = :code", HerdRow.class)
                    .setParameter("code", posted.code)
                    .getResultList()
                    .stream()
                    .findFirst();
            if (there.isEmpty()) {
                posted.id = RecordIds.next();
                posted.recordedAt = clock.instant().truncatedTo(ChronoUnit.MILLIS);
                session.insert(posted);
                return new Taken(posted, true);
            }
            HerdRow herd = there.get();
            if (!herd.name.equals(posted.name) || !herd.timeZone.equals(posted.timeZone)) {
                throw new Problem(
                        ProblemCode.HERD_EXISTS,
                        "There is a herd with this code and another name or zone; it was left as it is.",
                        List.of(Fault.inBody("/code", "herd-exists", "is taken").withValue(posted.code)));
            }
            return new Taken(herd, false);
        });
    }

    /**
     * Gives a herd another name or zone; what it had is kept.
     *
     * @param expected whether the version in force is the one the caller means
     * @throws Problem if the herd has another version, or the body is wrong
     */
    public HerdRow change(HerdRow seen, String writtenBy, IntPredicate expected, Edit edit) {
        return gate.write(session -> {
            ChangeTurn turn = WriteGate.lockForChange(session, seen.id, clock.instant());
            HerdRow herd = session.get(HerdRow.class, seen.id);
            RecordAmendment.requireExpected(herd.version, expected);
            HerdRow wanted = read(edit.change().apply(content(herd)), edit.cleared());
            if (!wanted.code.equals(herd.code)) {
                throw Problem.validation(
                        List.of(Fault.inBody("/code", "code-fixed", "cannot be changed: it is in every address")
                                .withValue(wanted.code)));
            }
            if (wanted.name.equals(herd.name) && wanted.timeZone.equals(herd.timeZone)) {
                return herd;
            }
            session.insert(asReplaced(herd));
            herd.name = wanted.name;
            herd.timeZone = wanted.timeZone;
            herd.version++;
            herd.versionSeq = turn.lastChange() + 1;
            herd.changeSeq = herd.versionSeq;
            herd.recordedAt = turn.at();
            herd.recordedBy = writtenBy;
            session.update(herd);
            WriteGate.noteLastChange(session, herd.id, herd.versionSeq, turn.at());
            return herd;
        });
    }

    private static SupersededVersionRow asReplaced(HerdRow herd) {
        SupersededVersionRow old = new SupersededVersionRow();
        old.recordId = herd.id;
        old.version = herd.version;
        old.herdId = herd.id;
        old.kind = HerdRow.KIND;
        old.changeSeq = herd.versionSeq;
        old.recordedAt = herd.recordedAt;
        old.recordedBy = herd.recordedBy;
        old.content = content(herd).toString();
        return old;
    }

    private static ObjectNode content(HerdRow herd) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("code", herd.code)
                .put("name", herd.name)
                .put("timeZone", herd.timeZone);
    }

    private static HerdRow read(ObjectNode body, Set<String> cleared) {
        Fields fields = new Fields(body, "");
        HerdRow herd = new HerdRow();
        herd.code = fields.requiredText("code", LONGEST_NAME);
        herd.name = fields.requiredText("name", LONGEST_NAME);
        herd.timeZone = fields.requiredText("timeZone", LONGEST_NAME);
        fields.finish(cleared);
        if (herd.code != null && !Herds.isCode(herd.code)) {
            fields.findings()
                    .add(FindingView.error("bad-code", "/code", "must be 1 to 40 of a-z, 0-9 and -")
                            .seen(herd.code));
        }
        if (herd.timeZone != null && !ZONES.contains(herd.timeZone)) {
            fields.findings()
                    .add(FindingView.error(
                                    "unknown-time-zone", "/timeZone", "must be an IANA zone such as Europe/Dublin")
                            .seen(herd.timeZone));
        }
        if (!fields.findings().isEmpty()) {
            throw Problem.validation(
                    fields.findings().stream().map(FindingView::asFault).toList());
        }
        return herd;
    }
}
