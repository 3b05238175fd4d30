/** Start and settings: the first key, the sample herd, what every request must keep to, the description of the API, health. */
package org.pailbook.records.app;
