package org.pailbook.records.herd;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.Set;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.store.WriteGate;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** Makes herds. */
@ApplicationScoped
public class HerdIntake {
    private static final int LONGEST_NAME = 200;
    private static final Set<String> ZONES = ZoneId.getAvailableZoneIds();

    private final WriteGate gate;
    private final Clock clock;

    @Inject
    HerdIntake(WriteGate gate, Clock clock) {
        this.gate = gate;
        this.clock = clock;
    }

    /** A herd, and whether this request made it. */
    public record Taken(HerdRow herd, boolean isNew) {}

    /**
     * Makes the herd; the same herd again changes nothing.
     *
     * @throws Problem if the body is wrong, or another herd has the code
     */
    public Taken take(ObjectNode body, String writtenBy) {
        HerdRow posted = read(body);
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
                        java.util.List.of(
                                Fault.inBody("/code", "herd-exists", "is taken").withValue(posted.code)));
            }
            return new Taken(herd, false);
        });
    }

    private static HerdRow read(ObjectNode body) {
        Fields fields = new Fields(body, "");
        HerdRow herd = new HerdRow();
        herd.code = fields.requiredText("code", LONGEST_NAME);
        herd.name = fields.requiredText("name", LONGEST_NAME);
        herd.timeZone = fields.requiredText("timeZone", LONGEST_NAME);
        fields.finish();
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
