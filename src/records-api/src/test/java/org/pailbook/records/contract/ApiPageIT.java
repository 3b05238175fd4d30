package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The page for reading the description in a browser. */
@Tag("contract")
class ApiPageIT {
    private static final Pattern ID = Pattern.compile(" id=\"([^\"]+)\"");
    private static final Pattern LINK = Pattern.compile("href=\"#([^\"]+)\"");

    @Test
    void thePageShowsEveryOperationWithoutAKeyAndLoadsNothing() throws IOException {
        ApiCaller.Heard heard = Story.shared().service().caller(null).send("GET", "/v1/docs", null, null, Map.of());
        assertThat(heard.status()).isEqualTo(200);
        assertThat(heard.mediaType()).isEqualTo("text/html");
        String page = heard.text();
        // two policies of which one forbids the style once left the page bare
        assertThat(heard.headers().allValues("content-security-policy"))
                .singleElement()
                .asString()
                .contains("style-src 'sha256-");
        Set<String> ids = all(ID, page);
        assertThat(ids).containsAll(ApiDocument.committed().operationsById().keySet());
        assertThat(ids).containsAll(all(LINK, page));
        assertThat(page).contains("FB-0311").doesNotContain("<script", "src=", "url(", "@import");
    }

    private static Set<String> all(Pattern pattern, String page) {
        Set<String> found = new HashSet<>();
        Matcher matcher = pattern.matcher(page);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }
}
