package org.pailbook.records.access;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks a resource of pages: whoever signed in in the browser is known by a cookie, and who did not is led to the sign-in page instead of being
 * refused. What such a resource changes, {@link SameSiteFilter} lets be changed from our own pages only.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
public @interface WithSession {}
