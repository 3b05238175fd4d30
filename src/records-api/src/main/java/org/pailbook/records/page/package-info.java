/**
 * Pages people read in a browser: herds, a herd, a cow, lists. They need no JavaScript and nothing from elsewhere; what they change goes through the intake.
 *
 * <p>Entry: {@link PageResource}. Each page is a record of what it shows, made from library figures, and a template of the same content in
 * {@code templates/page}; {@link Shown} carries day and unit through. Words stand in {@code page/words.properties}, so that a translation is a file.
 * Errors are answered as pages by the problem package; sessions are kept by the access package.
 */
package org.pailbook.records.page;
