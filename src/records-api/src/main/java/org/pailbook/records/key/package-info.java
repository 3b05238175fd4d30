/** Keys over HTTP: made, listed, given a new text, revoked. */
package org.pailbook.records.key;
