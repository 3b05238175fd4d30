/** The tank: readings, pickups, and milk used otherwise. */
package org.pailbook.records.tank;
