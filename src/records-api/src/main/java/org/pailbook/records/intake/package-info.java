/**
 * The one way in which a posted record goes in: read it, check it, find what it replaces, write it, tell the outcome.
 *
 * <p>Entry: {@link RecordIntake}, for any {@link RecordKind}. The slices define their kinds; single and bulk posts take the same
 * way, so they cannot differ. Nothing is dropped or changed in silence: each row has an outcome, and a version that is
 * replaced is kept.
 */
package org.pailbook.records.intake;
