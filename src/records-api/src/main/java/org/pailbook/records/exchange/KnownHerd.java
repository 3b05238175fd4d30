package org.pailbook.records.exchange;

import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/**
 * The herd a figure is computed for.
 *
 * @param herd as it was known; what is read for it is read up to the change its row names
 */
public record KnownHerd(HerdRow herd, AsOf asOf) {}
