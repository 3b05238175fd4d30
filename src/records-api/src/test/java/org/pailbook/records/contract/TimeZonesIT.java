package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The day of a record is the farm's day, wherever the machine of the service stands. */
@Tag("contract")
class TimeZonesIT {
    /** The first two are 25 hours apart: at every moment they have different days. */
    private static final List<String> FARMS = List.of(
            "Pacific/Kiritimati", "Pacific/Pago_Pago", "Pacific/Auckland", "America/New_York", "Europe/Dublin", "UTC");

    @ParameterizedTest
    @ValueSource(strings = {"Pacific/Auckland", "America/New_York", "UTC"})
    void aRecordBelongsToTheFarmsDayWhereverTheMachineStands(String machine, @TempDir Path data) throws IOException {
        try (FreshService service =
                FreshService.start(FreshService.Database.SQLITE, data, "-Duser.timezone=" + machine)) {
            todayIsTheFarmsDay(machine, service.caller());
            aMilkingBelongsToTheFarmsDayAlsoWhenClocksChange(machine, service.caller());
        }
    }

    private static void todayIsTheFarmsDay(String machine, ApiCaller caller) {
        for (String farm : FARMS) {
            String herd = "/v1/herds/" + makeHerd(caller, farm);
            LocalDate before = LocalDate.now(ZoneId.of(farm));
            String asOf = get(caller, herd + "/summary").json().path("asOf").asText();
            ApiCaller.Heard today = post(caller, herd + "/test-days", testDay(before));
            ApiCaller.Heard dayAfterTomorrow = post(caller, herd + "/test-days", testDay(before.plusDays(2)));
            LocalDate after = LocalDate.now(ZoneId.of(farm));
            assertThat(LocalDate.parse(asOf)).as(farm + " on " + machine).isBetween(before, after);
            assertThat(today.status())
                    .as(farm + " on " + machine + today.text())
                    .isEqualTo(201);
            assertThat(today.json().at("/record/date").asText()).isEqualTo(before.toString());
            assertThat(dayAfterTomorrow.status()).as(dayAfterTomorrow.text()).isEqualTo(422);
            if (before.equals(after)) {
                ApiCaller.Heard tomorrow = post(caller, herd + "/test-days", testDay(before.plusDays(1)));
                // the day may have changed since
                assertThat(tomorrow.status() == 422
                                || LocalDate.now(ZoneId.of(farm)).isAfter(before))
                        .as(farm + " on " + machine + ": " + tomorrow.text())
                        .isTrue();
            }
        }
    }

    /** Days on which clocks change: New Zealand and the United States, both ways, by the rules of the IANA database. */
    private static void aMilkingBelongsToTheFarmsDayAlsoWhenClocksChange(String machine, ApiCaller caller) {
        for (String farm : List.of("Pacific/Auckland", "America/New_York", "UTC")) {
            String herd = "/v1/herds/" + herdCode(farm);
            for (String day : List.of("2025-04-06", "2025-09-28", "2025-03-09", "2025-11-02")) {
                LocalDate date = LocalDate.parse(day);
                for (LocalDateTime time : List.of(
                        date.atTime(0, 30).minusHours(1),
                        date.atTime(0, 30),
                        date.atTime(23, 30),
                        date.plusDays(1).atTime(0, 30))) {
                    OffsetDateTime instant = time.atZone(ZoneId.of(farm)).toOffsetDateTime();
                    ApiCaller.Heard posted = post(
                            caller,
                            herd + "/milkings",
                            "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"T-1\"},\"startedAt\":\"%s\",\"milkingOfDay\":\"am\",\"milkKg\":12}"
                                    .formatted(instant));
                    assertThat(posted.status())
                            .as(farm + " " + instant + posted.text())
                            .isEqualTo(201);
                    assertThat(Instant.parse(
                                    posted.json().at("/record/startedAt").asText()))
                            .isEqualTo(instant.toInstant());
                }
                ApiCaller.Heard ofDay = get(caller, herd + "/milkings?from=" + day + "&to=" + day);
                assertThat(ofDay.json().path("items").size())
                        .as(farm + " on " + machine + ", " + day + ": " + ofDay.text())
                        .isEqualTo(2);
            }
        }
    }

    private static String makeHerd(ApiCaller caller, String zone) {
        String code = herdCode(zone);
        assertThat(post(
                                caller,
                                "/v1/herds",
                                "{\"code\":\"%s\",\"name\":\"%s\",\"timeZone\":\"%s\"}".formatted(code, code, zone))
                        .status())
                .isEqualTo(201);
        post(
                caller,
                "/v1/herds/" + code + "/animals",
                "{\"identifiers\":[{\"scheme\":\"example.eartag\",\"id\":\"T-1\"}]}");
        return code;
    }

    private static String herdCode(String zone) {
        return zone.toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z]", "-");
    }

    private static String testDay(LocalDate date) {
        return "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"T-1\"},\"date\":\"" + date + "\",\"milkKg\":25}";
    }

    private static ApiCaller.Heard post(ApiCaller caller, String path, String body) {
        return caller.send("POST", path, "application/json", body, Map.of());
    }

    private static ApiCaller.Heard get(ApiCaller caller, String path) {
        return caller.send("GET", path, null, null, Map.of());
    }
}
