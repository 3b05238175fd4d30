package org.pailbook.records.access;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks a resource of pages that only read: whoever signed in in the browser is known by a cookie, and who did not is led to the sign-in page
 * instead of being refused.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
public @interface WithSession {}
