/** Single milkings: posted one by one or many at once, listed, fetched. */
package org.pailbook.records.milking;
