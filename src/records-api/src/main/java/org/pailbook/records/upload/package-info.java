/**
 * Tables that people choose in a browser, whatever program wrote them: looked at, their columns given a meaning by a person, judged, taken.
 *
 * <p>Entry: {@link PendingFiles} holds a chosen file for a while, {@link FileJobs} judges or takes it. {@link FileLook} tells what cannot be read as a
 * table; {@link MappedTable} makes the table the API takes of it, so that the rows go in by {@link org.pailbook.records.intake.RecordIntake} like all
 * others. Nothing is guessed where a wrong guess would give plausible figures: units, the order of day and month and the encoding are asked, with what
 * the file shows.
 */
package org.pailbook.records.upload;
