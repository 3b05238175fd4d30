/** Udder health of a herd by cell counts and foremilk. */
package org.pailbook.records.udder;
