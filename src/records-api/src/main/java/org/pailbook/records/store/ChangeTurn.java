package org.pailbook.records.store;

import java.time.Instant;

/**
 * A turn to change a herd, held until its transaction ends.
 *
 * @param lastChange number of the herd's last change so far
 * @param at when what is written now is recorded; later than every change before, whatever the clocks of several services say
 */
public record ChangeTurn(long lastChange, Instant at) {}
