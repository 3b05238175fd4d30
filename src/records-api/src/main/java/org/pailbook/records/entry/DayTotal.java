package org.pailbook.records.entry;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the herd gave on a day by its weights, beside what the tank said.
 *
 * @param cowsInMilk on the day
 * @param cowsWeighed those with any weight
 * @param cowsInPart those of whom not all milkings are there
 * @param milkKg of all weights
 * @param usedKg what went to calves, into the house, was thrown away or otherwise used on the day, by its records
 * @param tank what was read or picked up on that day and the next, in order of time
 */
public record DayTotal(
        int cowsInMilk, int cowsWeighed, int cowsInPart, double milkKg, double usedKg, List<TankAmount> tank) {
    /**
     * Milk in or out of a tank.
     *
     * @param isPickup whether it was picked up; else it was read
     * @param milkKg as recorded; empty if it was recorded in litres
     * @param milkLitres as recorded
     */
    public record TankAmount(
            boolean isPickup, String tank, Instant at, OptionalDouble milkKg, OptionalDouble milkLitres) {}
}
