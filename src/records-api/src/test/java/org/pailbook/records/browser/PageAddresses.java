package org.pailbook.records.browser;

import java.util.List;

/** Where the pages are, of the sample herd on a day with something to see. A page that is added gets a line here. */
final class PageAddresses {
    static final String HERD = "/pages/herds/brejo-alto";
    static final String DAY = "2026-10-12";
    static final String COW = HERD + "/animals/example.eartag%3APT-BA-0355";

    private PageAddresses() {}

    /** Pages that are a form to be filled in, on paper as well. */
    static boolean isForm(String page) {
        return page.matches(".*/(settings|new-cow|weigh-day|import|weigh-day/order)(\\?.*)?");
    }

    static List<String> all() {
        return List.of(
                "/pages/sign-in",
                "/pages",
                HERD + "?asOf=" + DAY,
                COW + "?asOf=" + DAY,
                HERD + "/lists?asOf=" + DAY,
                HERD + "/lists/milk-withheld?asOf=" + DAY,
                HERD + "/lists/to-breed?asOf=" + DAY,
                HERD + "/lists/to-check?asOf=" + DAY,
                HERD + "/lists/due-to-dry-off?asOf=" + DAY,
                HERD + "/lists/culling?asOf=" + DAY,
                HERD + "/lists/udder-health?asOf=" + DAY,
                HERD + "/projections?asOf=" + DAY,
                HERD + "/animals?asOf=" + DAY,
                HERD + "/how-to?asOf=" + DAY,
                HERD + "/settings?asOf=" + DAY,
                HERD + "/new-cow",
                HERD + "/findings?asOf=" + DAY,
                HERD + "/accuracy?asOf=" + DAY,
                HERD + "/weigh-day?asOf=" + DAY,
                HERD + "/import?asOf=" + DAY,
                HERD + "/weigh-day/order?asOf=" + DAY,
                HERD + "/weigh-day/total?asOf=" + DAY,
                HERD + "/no-such-page");
    }
}
