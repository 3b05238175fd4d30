package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** What milk, cows and feed cost from a day on. */
@Entity
@Table(name = "price")
public class PriceRow extends DatedRecord {
    public String currency;

    @Column(name = "milk_price_per_kg")
    public Double milkPricePerKg;

    @Column(name = "fat_price_per_kg")
    public Double fatPricePerKg;

    @Column(name = "protein_price_per_kg")
    public Double proteinPricePerKg;

    @Column(name = "heifer_price")
    public Double heiferPrice;

    @Column(name = "cull_price")
    public Double cullPrice;

    @Column(name = "calf_price")
    public Double calfPrice;

    @Column(name = "feed_price_per_kg_dry_matter")
    public Double feedPricePerKgDryMatter;

    @Column(name = "service_price")
    public Double servicePrice;

    @Column(name = "fixed_cost_per_cow_month")
    public Double fixedCostPerCowMonth;

    public String note;
}
