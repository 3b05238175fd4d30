/**
 * Cows and herds drawn as SVG: what was weighed, what was expected, how far off it may be.
 *
 * <p>Each picture is one class with one entry that gives the whole {@code <svg>} as text, fit to stand in a page or to be a file. They read in black
 * and white: what a line or mark is, its dash and shape say, a tint only helps. Every picture has a title, a description and the role of an image;
 * text from outside is escaped. Numbers are drawn, never computed here.
 */
package org.pailbook.picture;
