package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.entry.EntryChoice;
import org.pailbook.records.entry.SheetChoices;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;

/** What every page of a weigh day needs: who types, on which herd and day, and how the sheet is to look. */
@ApplicationScoped
public class WeighDayDesk {
    private final HerdAccess access;
    private final Caller caller;
    private final PageDesk desk;
    private final SheetChoices choices;

    @Inject
    WeighDayDesk(HerdAccess access, Caller caller, PageDesk desk, SheetChoices choices) {
        this.access = access;
        this.caller = caller;
        this.desk = desk;
        this.choices = choices;
    }

    HerdRow toWrite(String herdCode) {
        return access.toWrite(herdCode);
    }

    String keyId() {
        return caller.keyId();
    }

    Shown toRead(String herdCode, PageQuery query) {
        return desk.shown(access.toRead(herdCode), query);
    }

    Shown shown(HerdRow herd, PageQuery query) {
        return desk.shown(herd, query);
    }

    /** As the form was shown when it was filled in. */
    Shown shown(HerdRow herd, FormFields form) {
        return desk.shown(herd, PageQuery.of(form.required("asOf"), form.required("unit")));
    }

    EntryChoice choice(HerdRow herd) {
        return choices.of(herd, caller.keyId());
    }

    static int milkings(String text) {
        if (!text.matches("[123]")) {
            throw noSuchField("milkings");
        }
        return Integer.parseInt(text);
    }

    static Problem noSuchField(String name) {
        return new Problem(ProblemCode.MALFORMED_FORM, "The field " + name + " is not one of this form.");
    }
}
