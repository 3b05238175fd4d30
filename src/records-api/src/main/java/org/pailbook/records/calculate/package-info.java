/**
 * The library's methods over HTTP without storing anything: curves, yields, corrected milk and persistency of what is posted.
 *
 * <p>Entry: {@link org.pailbook.records.calculate.CalculateResource}. A posted lactation is read by {@link
 * org.pailbook.records.calculate.PostedLactation}; it is answered in the shape of a stored one. Only what cannot be is refused (a negative weight, a date
 * that is none); what is unusual, or too little, is told by the findings of the library.
 */
package org.pailbook.records.calculate;
