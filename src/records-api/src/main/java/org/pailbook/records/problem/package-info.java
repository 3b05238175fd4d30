/**
 * The one way in which the service says no: RFC 9457 problem bodies with stable codes.
 *
 * <p>Entry: throw a {@link Problem} with a {@link ProblemCode} and the {@link Fault faults} found. {@link ProblemMappers} turns it,
 * and every other exception, into the answer. No answer holds a class name, SQL or a stack; an unforeseen error is logged
 * under the request id that the answer shows.
 */
package org.pailbook.records.problem;
