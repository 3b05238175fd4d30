/** Which cow is to be served, checked, dried off, and how well a herd gets in calf. */
package org.pailbook.records.reproduction;
