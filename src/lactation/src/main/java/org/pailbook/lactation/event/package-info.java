/**
 * What happens to a cow besides being milked, as plain records: calving, abortion, dry-off, departure, service,
 * pregnancy check, treatment, foremilk check.
 *
 * <p>Dates are days of the farm's own zone. Assembly of these into lactations is in the {@code testday} package.
 */
package org.pailbook.lactation.event;
