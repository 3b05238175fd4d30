/**
 * JSON as it stands on the wire, in both directions.
 *
 * <p>In: {@link StrictJson} reads bodies and {@link Fields} their members, noting every fault with its place instead of stopping at
 * the first; nothing is coerced, dropped or defaulted. Out: {@link FigureView}, {@link FindingView} and {@link Page} are the
 * shapes several slices share.
 */
package org.pailbook.records.wire;
