/** The cows of a herd in the order of what keeping each is worth. */
package org.pailbook.records.culling;
