package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Every operation of the description tried with keys that must not do it; the bodies are the good ones of the examples. */
@Tag("contract")
class AccessIT {
    private static final String STRANGER = "lower-mill";
    private static final String NO_HERD = "no-such-herd";
    private static final Pattern ID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");

    private static Story story;
    private static ApiCaller stranger;

    @BeforeAll
    static void tell() throws IOException {
        story = Story.shared();
        ApiCaller.Heard made = story.service()
                .caller()
                .send(
                        "POST",
                        "/v1/herds",
                        "application/json",
                        "{\"code\":\"lower-mill\",\"name\":\"Lower Mill\",\"timeZone\":\"Europe/Dublin\"}",
                        Map.of());
        assertThat(made.status()).as(made.text()).isEqualTo(201);
        stranger = story.service().caller(story.key("read write calculate", STRANGER));
    }

    @Test
    void anotherHerdAnswersLikeOneThatDoesNotExistAndIsNotTouched() {
        List<ApiCaller.Heard> before = story.everythingRead();
        List<String> faults = new ArrayList<>();
        for (ApiExample example : story.good(true)) {
            ApiCaller.Heard other = stranger.send(example, story.ids());
            ApiCaller.Heard none = stranger.send(
                    example, story.ids(), text -> story.ids().real(text).replace(Story.HERD, NO_HERD));
            if (other.status() != 404 || !isSame(other, none)) {
                faults.add(example + ": " + other + "\n  but a herd that is not there: " + none);
            }
        }
        assertThat(faults).isEmpty();
        assertUnchanged(before);
    }

    @Test
    void recordsOfAnotherHerdAreNotReachedThroughTheOwnOne() {
        List<ApiCaller.Heard> before = story.everythingRead();
        List<String> faults = new ArrayList<>();
        int tried = 0;
        for (ApiExample example : story.good(true)) {
            if (namesARecord(example)) {
                tried++;
                ApiCaller.Heard other = stranger.send(example, story.ids(), AccessIT::throughTheOwnHerd);
                ApiCaller.Heard none =
                        stranger.send(example, story.ids(), text -> unknownRecord(throughTheOwnHerd(text)));
                if (other.status() != 404 || !isSame(other, none)) {
                    faults.add(example + ": " + other + "\n  but a record that is not there: " + none);
                }
            }
        }
        assertThat(faults).isEmpty();
        assertThat(tried).isPositive();
        assertUnchanged(before);
    }

    /** Not the name of a table or of a kind of record, which every herd has. */
    private static boolean namesARecord(ApiExample example) {
        String own = ApiCaller.target(example, AccessIT::throughTheOwnHerd);
        return !own.equals(ApiCaller.target(example, text -> unknownRecord(throughTheOwnHerd(text))));
    }

    private static String throughTheOwnHerd(String text) {
        return story.ids().real(text).replace(Story.HERD, STRANGER);
    }

    private static String unknownRecord(String text) {
        return ID.matcher(text.replace("FB-", "XX-"))
                .replaceAll(found ->
                        UUID.nameUUIDFromBytes(found.group().getBytes()).toString());
    }

    @Test
    void whatIsNotOfOneHerdTellsNothingOfAnotherOne() {
        for (ApiExample example : story.good(false)) {
            if (example.operation().method().equals("GET")
                    && !example.operation().isOpen()) {
                assertThat(stranger.send(example, story.ids()).text())
                        .as(example.stem())
                        .doesNotContain(Story.HERD, "Fernbrook", "FB-0");
            }
        }
    }

    @Test
    void withoutTheScopeTheDescriptionNamesAnOperationIsRefused() {
        Map<String, ApiCaller> without = Map.of(
                "read", story.service().caller(story.key("write calculate", "*")),
                "write", story.service().caller(story.key("read calculate", "*")),
                "calculate", story.service().caller(story.key("read write", "*")),
                "admin", story.service().caller(story.key("read write calculate", "*")));
        List<String> faults = new ArrayList<>();
        for (ApiExample example : story.examples()) {
            String scope = example.operation().scope();
            if (scope != null && example.status() != null && example.status().startsWith("2")) {
                ApiCaller.Heard heard = without.get(scope).send(example, story.ids());
                if (heard.status() != 403 || !heard.text().contains("scope-missing")) {
                    faults.add(example + " without " + scope + ": " + heard);
                }
            }
        }
        assertThat(faults).isEmpty();
    }

    @Test
    void withoutAKeyOnlyWhatIsDescribedAsOpenAnswers() {
        ApiCaller nobody = story.service().caller(null);
        List<String> faults = new ArrayList<>();
        for (ApiExample example : story.examples()) {
            ApiCaller.Heard heard = nobody.send(example, story.ids());
            boolean isRefused = heard.status() == 401 && heard.text().contains("not-authenticated");
            if (isRefused == example.operation().isOpen()) {
                faults.add(example + ": " + heard);
            }
        }
        assertThat(faults).isEmpty();
    }

    private static void assertUnchanged(List<ApiCaller.Heard> before) {
        List<ApiCaller.Heard> after = story.everythingRead();
        for (int i = 0; i < before.size(); i++) {
            if (before.get(i).mediaType().endsWith("json")) {
                assertThat(story.ids()
                                .differences(before.get(i).json(), after.get(i).json(), List.of()))
                        .isEmpty();
            } else {
                assertThat(after.get(i).text()).isEqualTo(before.get(i).text());
            }
        }
    }

    /** Whether nobody could tell the two answers apart. */
    private static boolean isSame(ApiCaller.Heard one, ApiCaller.Heard two) {
        return one.status() == two.status()
                && one.mediaType().equals(two.mediaType())
                && bare(one.json()).equals(bare(two.json()));
    }

    /** Without what names the request itself. */
    private static JsonNode bare(JsonNode problem) {
        ObjectNode bare = problem.deepCopy();
        bare.remove(List.of("requestId", "instance"));
        return bare;
    }
}
