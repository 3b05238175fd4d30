package org.pailbook.records.entry;

import java.util.Optional;

/**
 * What somebody typed, and what stood there when they did.
 *
 * @param value in the unit of the record; empty to take the value away
 * @param seen in the unit of the record; empty if the field was empty
 */
public record TypedCell(Optional<Double> value, Optional<Double> seen) {}
