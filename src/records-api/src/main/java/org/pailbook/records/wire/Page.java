package org.pailbook.records.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * One page of a list.
 *
 * @param items in a fixed order
 * @param next address of the next page; absent on the last
 * @param total how many there are on all pages; only if it was asked for
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Page<T>(List<T> items, String next, Long total) {
    public Page(List<T> items, String next) {
        this(items, next, null);
    }
}
