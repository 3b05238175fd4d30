/**
 * Who may do what: keys, scopes, and which herds a key reaches.
 *
 * <p>{@link KeyFilter} finds the {@link Caller} of each request; {@link HerdAccess} is the one place where a herd is loaded, and a
 * herd out of reach is answered exactly like one that does not exist.
 */
package org.pailbook.records.access;
