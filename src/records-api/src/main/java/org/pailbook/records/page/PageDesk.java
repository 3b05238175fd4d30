package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.access.Scope;
import org.pailbook.records.computed.HerdCows;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.HerdRow;

/** What every page of a herd begins with: may it be read, for which day, in which unit, and who is in it. */
@ApplicationScoped
class PageDesk {
    private final HerdAccess access;
    private final Caller caller;
    private final HerdSettings settings;
    private final HerdCows cows;
    private final Clock clock;

    @Inject
    PageDesk(HerdAccess access, Caller caller, HerdSettings settings, HerdCows cows, Clock clock) {
        this.access = access;
        this.caller = caller;
        this.settings = settings;
        this.cows = cows;
        this.clock = clock;
    }

    Shown shown(String herdCode, PageQuery query) {
        return shown(access.toRead(herdCode), query);
    }

    /** The same for whoever may write. */
    Shown toWrite(String herdCode, PageQuery query) {
        return shown(access.toWrite(herdCode), query);
    }

    Shown shown(HerdRow herd, PageQuery query) {
        LocalDate day = query.day(today(herd));
        MilkUnit usual = settings.on(herd, day).milkUnit().flatMap(MilkUnit::of).orElse(MilkUnit.KG);
        return new Shown(herd, day, query.asksForDay(), query.unit(usual), usual, mayWrite());
    }

    LocalDate today(HerdRow herd) {
        return LocalDate.ofInstant(clock.instant(), herd.zone());
    }

    boolean mayWrite() {
        return caller.scopes().contains(Scope.WRITE) || caller.scopes().contains(Scope.ADMIN);
    }

    /** Every animal born by the day. */
    List<KnownCow> all(Shown shown) {
        return cows.all(shown.herd(), shown.asOf());
    }

    /** One that the path names. */
    KnownCow one(Shown shown, String animal) {
        return cows.one(shown.herd(), access.animal(shown.herd(), animal), shown.asOf());
    }
}
