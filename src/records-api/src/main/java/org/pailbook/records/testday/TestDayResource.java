package org.pailbook.records.testday;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.TestDayRow;

/** The test days of a herd over HTTP. */
@Path("/v1/herds/{herd}/test-days")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Test days")
public class TestDayResource extends EventResource<TestDayRow, TestDayBody> {
    private final TestDayKind kind;

    @Inject
    TestDayResource(TestDayKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<TestDayRow> kind() {
        return kind;
    }

    @Override
    protected TestDayBody view(TestDayRow record, AnimalIdentifier animal) {
        return TestDayBody.of(record, animal);
    }
}
