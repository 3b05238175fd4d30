/**
 * The description of the API held against the service: every example is sent, every operation is tried with keys of other herds and
 * scopes and with random requests, and the description may only grow. All of it is made from the document {@code openapi/pailbook-v1.json},
 * so an operation added there is covered by itself.
 */
package org.pailbook.records.contract;
