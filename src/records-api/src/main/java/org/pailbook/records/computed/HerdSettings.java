package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InForce;
import org.pailbook.records.store.SettingRow;

/** The settings of a herd that hold on a day. */
@ApplicationScoped
public class HerdSettings {
    private final InForce inForce;

    @Inject
    HerdSettings(InForce inForce) {
        this.inForce = inForce;
    }

    public SettingsInForce on(HerdRow herd, LocalDate day) {
        return new SettingsInForce(inForce.on(SettingRow.class, herd, day));
    }
}
