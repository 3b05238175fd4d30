package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.pailbook.records.problem.PackagedService;

/**
 * Random requests to the packaged service over a socket: whatever comes in, an answer goes out that says what it is, shows nothing of how
 * the service is made, and a refusal changes nothing. {@code -Dpailbook.random.requests=20000} sends more of them,
 * {@code -Dpailbook.random.seed=} others.
 */
@Tag("contract")
class RandomRequestsIT {
    private static final int REQUESTS = Integer.getInteger("pailbook.random.requests", 1_000);
    private static final long SEED = Long.getLong("pailbook.random.seed", 20_251_112L);
    private static final int MOST_FAULTS_SHOWN = 20;

    /** What would show how the service is made. */
    private static final Pattern INSIDE = Pattern.compile(
            "[a-z]Exception\\b|\\.java:\\d|\\bat [a-z]+(\\.\\w+)+\\(|org\\.(pailbook|hibernate|sqlite|postgresql|jboss)"
                    + "|com\\.fasterxml|io\\.(quarkus|vertx|netty)|java\\.(lang|util|io|time|net)\\.|jakarta\\.|SQLITE_|SQLState|JDBC");

    @ParameterizedTest
    @EnumSource
    void everyRequestIsAnsweredInWordsAndRefusedOnesChangeNothing(FreshService.Database database, @TempDir Path data)
            throws IOException, SQLException {
        Map<Integer, Integer> byStatus = new TreeMap<>();
        List<String> faults = new ArrayList<>();
        try (Story story = Story.tell(database, data);
                StoredState stored = StoredState.of(story.service(), data)) {
            RandomRequests requests = new RandomRequests(story.document(), story.ids(), PackagedService.KEY, SEED);
            Map<String, Long> counts = stored.counts();
            long writes = stored.writes();
            for (int i = 0; i < REQUESTS && faults.size() < MOST_FAULTS_SHOWN; i++) {
                RandomRequests.Request request = requests.next();
                String answer = story.service().service().exchange(request.text());
                int status = status(answer);
                byStatus.merge(status, 1, Integer::sum);
                String fault = fault(request, answer, status);
                long writesNow = stored.writes();
                if (writesNow != writes) {
                    Map<String, Long> now = stored.counts();
                    if (status >= 400 && !now.equals(counts)) {
                        fault = "refused, but stored: " + counts + " became " + now;
                    }
                    counts = now;
                    writes = writesNow;
                }
                if (fault != null) {
                    faults.add("request " + i + ", " + request.operation() + ": " + fault + "\n" + shown(request.text())
                            + "\n-> " + shown(answer));
                }
            }
        }
        System.out.println("random requests answered on " + database + ", by status: " + byStatus);
        assertThat(faults).isEmpty();
        // a generator that is always refused, or never, would prove little
        assertThat(byStatus).containsKeys(200, 201, 400, 401, 404, 405, 412, 415, 422);
    }

    private static String fault(RandomRequests.Request request, String answer, int status) {
        if (status < 200 || status >= 500) {
            return "status " + status;
        }
        int end = answer.indexOf("\r\n\r\n");
        String head = answer.substring(0, end).toLowerCase(Locale.ROOT);
        String body = answer.substring(end + 4);
        // which methods an address takes stands in the header Allow
        boolean tellsMethods = request.method().equals("OPTIONS") && head.contains("\r\nallow: ");
        // where the reader is sent stands in the header Location
        boolean isElsewhere = status == 303 && head.contains("\r\nlocation: ");
        boolean isBare = isElsewhere
                || status == 204
                || status == 304
                || request.method().equals("HEAD")
                || tellsMethods;
        if (!isBare && (body.isEmpty() || body.equals("0\r\n\r\n"))) {
            return "empty body";
        }
        if (!isBare && head.contains("content-type: text/html")) {
            return "HTML";
        }
        if (!isBare && status >= 400 && !head.contains("content-type: application/problem+json")) {
            return "a refusal that is no problem body";
        }
        if (INSIDE.matcher(answer).find()) {
            return "shows how the service is made";
        }
        if (answer.contains(PackagedService.KEY)) {
            return "shows a key";
        }
        return null;
    }

    private static int status(String answer) {
        return answer.startsWith("HTTP/1.1 ") ? Integer.parseInt(answer.substring(9, 12)) : 0;
    }

    private static String shown(String text) {
        String plain = text.replace("\r", "");
        return plain.length() > 1_500 ? plain.substring(0, 1_500) + "..." : plain;
    }
}
