package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pailbook.client.ApiClient;
import org.pailbook.client.ApiException;
import org.pailbook.client.ApiResponse;
import org.pailbook.client.api.AnimalsApi;
import org.pailbook.client.api.HerdsApi;
import org.pailbook.client.api.SummariesApi;
import org.pailbook.client.api.TestDaysApi;
import org.pailbook.client.model.Animal;
import org.pailbook.client.model.AnimalIdentifier;
import org.pailbook.client.model.BulkAnswer;
import org.pailbook.client.model.BulkTestDaysRequest;
import org.pailbook.client.model.Herd;
import org.pailbook.client.model.Outcome;
import org.pailbook.client.model.PageStoredViewTestDayBody;
import org.pailbook.client.model.PostedAnswerTestDayBody;
import org.pailbook.client.model.StoredViewTestDayBody;
import org.pailbook.client.model.TestDay;
import org.pailbook.client.model.TestDayPatch;
import org.pailbook.records.problem.PackagedService;

/** What an integrator does first, with a client that a general tool made of the description alone. */
@Tag("contract")
class GeneratedClientIT {
    private static final String HERD = "client-made";
    private static final LocalDate FIRST = LocalDate.of(2025, 3, 1);

    private static ApiClient client;
    private static TestDaysApi testDays;

    @BeforeAll
    static void makeAHerdWithOneCow() throws IOException, ApiException {
        client = new ApiClient();
        client.updateBaseUri(Story.shared().service().service().address());
        client.setRequestInterceptor(request -> request.header("X-API-Key", PackagedService.KEY));
        testDays = new TestDaysApi(client);
        new HerdsApi(client)
                .createHerd(new Herd().code(HERD).name("Client Made").timeZone("Europe/Dublin"), null);
        new AnimalsApi(client).upsertAnimal(HERD, new Animal().addIdentifiersItem(cow()), null);
    }

    @Test
    void aTestDayIsPostedFetchedAndChangedAndAnOldVersionIsRefused() throws ApiException {
        TestDay posted = testDay(0).fatPct(4.1);
        PostedAnswerTestDayBody made = testDays.upsertTestDay(HERD, posted, null);
        assertThat(made.getOutcome()).isEqualTo(Outcome.CREATED);
        ApiResponse<StoredViewTestDayBody> fetched =
                testDays.getTestDayWithHttpInfo(HERD, made.getId(), null, null, null);
        assertThat(fetched.getData().getRecord()).isEqualTo(posted);
        String tag = fetched.getHeaders().get("etag").get(0);

        TestDayPatch patch = new TestDayPatch().milkKg(26.5).fatPct(null);
        assertThat(testDays.patchTestDay(HERD, made.getId(), tag, patch).getOutcome())
                .isEqualTo(Outcome.UPDATED);
        TestDay changed =
                testDays.getTestDay(HERD, made.getId(), null, null, null).getRecord();
        assertThat(changed).isEqualTo(testDay(0).milkKg(26.5));

        ApiException refused =
                catchThrowableOfType(ApiException.class, () -> testDays.patchTestDay(HERD, made.getId(), tag, patch));
        assertThat(refused.getCode()).isEqualTo(412);
        assertThat(refused.getResponseBody()).contains("\"code\":\"");
    }

    @Test
    void manyAreSentAtOnceAndReadPageByPage() throws ApiException {
        BulkTestDaysRequest rows = new BulkTestDaysRequest();
        for (int i = 1; i <= 5; i++) {
            rows.addRowsItem(testDay(i));
        }
        BulkAnswer answer = testDays.bulkTestDays(HERD, rows, null, null, null, null);
        assertThat(answer.getCreated()).isEqualTo(5);
        assertThat(testDays.bulkTestDays(HERD, rows, null, null, null, null).getUnchanged())
                .isEqualTo(5);

        List<LocalDate> read = new ArrayList<>();
        String cursor = null;
        do {
            PageStoredViewTestDayBody page = testDays.listTestDays(
                    HERD, null, null, null, cursor, day(1).toString(), null, null, "2", null, null);
            assertThat(page.getItems()).hasSizeBetween(1, 2);
            page.getItems().forEach(item -> read.add(item.getRecord().getDate()));
            cursor = page.getNext() == null ? null : page.getNext().replaceAll(".*[?&]cursor=([^&]*).*", "$1");
        } while (cursor != null);
        assertThat(read).containsExactlyInAnyOrder(day(1), day(2), day(3), day(4), day(5));
    }

    @Test
    void aComputedAnswerIsRead() throws ApiException {
        assertThat(new SummariesApi(client)
                        .getHerdSummary(HERD, null, null, null)
                        .getHerd())
                .isEqualTo(HERD);
    }

    private static TestDay testDay(int number) {
        return new TestDay().animal(cow()).date(day(number)).milkKg(25.0);
    }

    private static LocalDate day(int number) {
        return FIRST.plusDays(30L * number);
    }

    private static AnimalIdentifier cow() {
        return new AnimalIdentifier().scheme("example.eartag").id("CM-1");
    }
}
