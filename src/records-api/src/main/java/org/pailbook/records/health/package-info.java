/** Treatments with the withholding days that were entered, and foremilk checks. Nothing here decides about milk or meat. */
package org.pailbook.records.health;
