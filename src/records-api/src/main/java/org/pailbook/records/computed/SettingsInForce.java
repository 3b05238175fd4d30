package org.pailbook.records.computed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.lactation.udderhealth.TankLimit;
import org.pailbook.lactation.udderhealth.TankLimits;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.computed.UsedSettingsView.UsedSettingView;
import org.pailbook.records.store.SettingRow;

/**
 * What a farm decides by on a day. Each value is as asked with the request, else as the set in force says, else as usual; which of the three
 * is kept, for the answer to say. Made for one answer, not for many threads.
 */
public final class SettingsInForce {
    private static final String ASKED = "asked";
    private static final String HERD = "herd";
    private static final String USUAL = "usual";

    private final Optional<SettingRow> set;
    private final List<UsedSettingView> used = new ArrayList<>();

    SettingsInForce(Optional<SettingRow> set) {
        this.set = set;
    }

    /** Each is what was asked with the request; empty if nothing was. */
    public BreedingSettings breeding(OptionalInt waitingDays, OptionalInt checkDays, OptionalInt dryDays) {
        SettingRow own = set.orElseGet(SettingRow::new);
        int waiting = number("waitingDays", waitingDays, own.waitingDays, BreedingSettings.WAITING_DAYS_IF_NOT_SET);
        boolean isAssumed = waitingDays.isEmpty() && own.waitingDays == null;
        return new BreedingSettings(
                isAssumed ? OptionalInt.empty() : OptionalInt.of(waiting),
                number("checkDays", checkDays, own.checkDays, BreedingSettings.USUAL.checkDays()),
                number("dryDays", dryDays, own.dryDays, BreedingSettings.USUAL.dryDays()));
    }

    /** The same with nothing asked. */
    public BreedingSettings breeding() {
        return breeding(OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty());
    }

    public CellCountCut highFrom(OptionalInt asked) {
        int usual = (int) CellCountCut.USUAL.highFromThousandPerMl();
        return new CellCountCut(
                number("highFrom", asked, set.map(own -> own.highFrom).orElse(null), usual));
    }

    /** Empty if none was chosen: none is usual. */
    public Optional<TankLimit> tankLimit(Optional<TankLimit> asked) {
        Optional<TankLimit> limit = asked.or(() -> set.map(own -> own.tankLimit).flatMap(TankLimits::byId));
        limit.ifPresent(
                one -> used.add(new UsedSettingView("tankLimit", null, one.id(), asked.isPresent() ? ASKED : HERD)));
        return limit;
    }

    public WithheldMilk withheld(OptionalInt colostrumDays) {
        Integer own = set.map(one -> one.colostrumDays).orElse(null);
        return WithheldMilk.withColostrumDays(
                number("colostrumDays", colostrumDays, own, WithheldMilk.USUAL.colostrumDays()));
    }

    /** In the currency of the herd's prices. */
    public double closeCallCu() {
        Optional<Double> own = set.map(one -> one.closeCall);
        double close = own.orElse(KeepOrReplace.CLOSE_CU);
        used.add(new UsedSettingView("closeCall", close, null, own.isPresent() ? HERD : USUAL));
        return close;
    }

    /** {@code kg} or {@code lb}; empty if not set. */
    public Optional<String> milkUnit() {
        return set.map(own -> own.milkUnit);
    }

    private int number(String name, OptionalInt asked, Integer own, int usual) {
        int value = asked.orElse(own == null ? usual : own);
        used.add(new UsedSettingView(
                name, (double) value, null, asked.isPresent() ? ASKED : own == null ? USUAL : HERD));
        return value;
    }

    /** Those used up to now. */
    public UsedSettingsView used() {
        return new UsedSettingsView(set.map(own -> own.date.toString()).orElse(null), List.copyOf(used));
    }
}
