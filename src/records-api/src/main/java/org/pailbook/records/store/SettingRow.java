package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** How a farm decides, from a day on; null where nothing was set. */
@Entity
@Table(name = "setting")
public class SettingRow extends DatedRecord {
    @Column(name = "waiting_days")
    public Integer waitingDays;

    @Column(name = "check_days")
    public Integer checkDays;

    @Column(name = "dry_days")
    public Integer dryDays;

    @Column(name = "colostrum_days")
    public Integer colostrumDays;

    @Column(name = "high_from")
    public Integer highFrom;

    @Column(name = "tank_limit")
    public String tankLimit;

    @Column(name = "close_call")
    public Double closeCall;

    @Column(name = "milk_unit")
    public String milkUnit;

    /** Usual ranges moved outwards, as JSON; null if none is. */
    @Column(name = "warning_limits")
    public String warningLimits;

    public String note;
}
