/** How a farm decides, from a day on. */
package org.pailbook.records.setting;
