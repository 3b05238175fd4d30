/**
 * What people type in by hand: the sheet of a weigh day.
 *
 * <p>Entry: {@link WeighDaySheets} lists the cows in milk with what each is expected to give, {@link SheetWriting} stores what was typed through the
 * intake, so with the checks and the history of every other record. Weights are in kg here; the page that shows the sheet converts.
 */
package org.pailbook.records.entry;
