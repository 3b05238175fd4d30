package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.breeding.Pregnancy.Known;
import org.pailbook.lactation.event.Insemination;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/**
 * Goes through one period's services, checks and abortions in order of day, and tells services that made her pregnant from those that did
 * not. Ours in detail; each rule stands at its method. Not for use by several threads.
 */
final class PeriodWalk {
    /** A check this soon after a service says nothing of it: neither hand, nor ultrasound, nor milk tells earlier. */
    private static final int OPEN_TOLD_AFTER_DAYS = 18;

    private static final int PREGNANT_TOLD_AFTER_DAYS = 25;

    /** An age put by hand may be this far off, and the service still be the one. */
    private static final int AGE_ERROR_DAYS = 10;

    /** Services further from calving less gestation did not lead to it. */
    private static final int GESTATION_ERROR_DAYS = 20;

    private final List<CountedService> services = new ArrayList<>();
    private final List<Pregnancy> pregnancies = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    List<CountedService> services() {
        return services;
    }

    List<Pregnancy> pregnancies() {
        return pregnancies;
    }

    List<Finding> findings() {
        return findings;
    }

    private Optional<Pregnancy> current() {
        return pregnancies.isEmpty()
                ? Optional.empty()
                : Optional.of(pregnancies.get(pregnancies.size() - 1)).filter(Pregnancy::goesOn);
    }

    private void replaceCurrent(Pregnancy by) {
        pregnancies.set(pregnancies.size() - 1, by);
    }

    private void settle(Predicate<CountedService> which, Outcome outcome) {
        services.replaceAll(service ->
                service.outcome() == Outcome.UNKNOWN && which.test(service) ? service.withOutcome(outcome) : service);
    }

    /** Served again: she was not pregnant of the services before, unless she had been found so; then she is to be checked. */
    void served(Insemination insemination) {
        LocalDate day = insemination.date();
        if (!services.isEmpty()) {
            CountedService last = services.get(services.size() - 1);
            if (!last.date().plusDays(CountedService.SAME_SERVICE_DAYS).isBefore(day)) {
                services.set(services.size() - 1, last.until(day, insemination.sireBreed()));
                return;
            }
        }
        Optional<Pregnancy> now = current();
        if (now.isPresent()) {
            findings.add(Finding.on(day, FindingCode.SERVED_WHILE_PREGNANT));
            replaceCurrent(now.get().doubted(day));
        } else {
            settle(earlier -> true, Outcome.OPEN);
        }
        services.add(new CountedService(
                day, day, insemination.sireBreed(), now.isPresent() ? Outcome.WHILE_PREGNANT : Outcome.UNKNOWN));
    }

    /** Found open: a pregnancy is lost, and services long enough ago did not take. */
    void foundOpen(LocalDate day) {
        current().ifPresent(pregnancy -> {
            // back in heat is the first sign there was
            LocalDate lost = pregnancy.doubtedOn().orElse(day);
            replaceCurrent(pregnancy.lost(lost));
            services.replaceAll(service -> service.outcome() == Outcome.WHILE_PREGNANT
                            && !service.date().isBefore(lost)
                    ? service.withOutcome(Outcome.UNKNOWN)
                    : service);
        });
        settle(service -> !service.date().plusDays(OPEN_TOLD_AFTER_DAYS).isAfter(day), Outcome.OPEN);
    }

    /** Found pregnant: of the service the age points to, else of the latest one a check can tell of. */
    void foundPregnant(LocalDate day, OptionalInt daysPregnant) {
        Optional<LocalDate> byAge =
                daysPregnant.isPresent() ? Optional.of(day.minusDays(daysPregnant.getAsInt())) : Optional.empty();
        Optional<Pregnancy> now = current();
        if (now.isPresent()) {
            Pregnancy before = now.get();
            boolean another = before.doubtedOn().isPresent()
                    && byAge.isPresent()
                    && byAge.get()
                            .plusDays(AGE_ERROR_DAYS)
                            .isAfter(before.doubtedOn().get());
            if (!another) {
                replaceCurrent(before.foundAgain());
                if (before.conception().isEmpty() && byAge.isPresent()) {
                    replaceCurrent(current().orElseThrow().since(byAge.get(), Known.AGE_AT_CHECK, ""));
                }
                return;
            }
            foundOpen(before.doubtedOn().get());
        }
        Optional<CountedService> of = byAge.isPresent()
                ? nearest(byAge.get(), AGE_ERROR_DAYS)
                : latest(day.minusDays(PREGNANT_TOLD_AFTER_DAYS)).or(() -> latest(day));
        conceived(of, byAge, Optional.of(day), byAge.isPresent() ? Known.AGE_AT_CHECK : Known.NOT_KNOWN);
    }

    /** Aborted: a pregnancy is lost; one nobody had found is put where a service fits. */
    void aborted(LocalDate day, OptionalInt daysPregnant) {
        if (current().isEmpty()) {
            Optional<LocalDate> byAge =
                    daysPregnant.isPresent() ? Optional.of(day.minusDays(daysPregnant.getAsInt())) : Optional.empty();
            Optional<CountedService> of = byAge.isPresent()
                    ? nearest(byAge.get(), AGE_ERROR_DAYS)
                    : latest(day.minusDays(PREGNANT_TOLD_AFTER_DAYS));
            if (of.isEmpty() && byAge.isEmpty()) {
                return;
            }
            conceived(of, byAge, Optional.empty(), Known.INFERRED);
        }
        replaceCurrent(current().orElseThrow().lost(day));
        settle(service -> !service.date().isAfter(day), Outcome.OPEN);
    }

    /** Calved: the pregnancy was of the service that fits the gestation, whatever was found before. */
    void calved(LocalDate day, double gestationDays) {
        LocalDate expected = day.minusDays(Math.round(gestationDays));
        Optional<Pregnancy> now = current();
        boolean fits = now.flatMap(Pregnancy::conception)
                .filter(conception -> daysApart(conception, expected) <= GESTATION_ERROR_DAYS)
                .isPresent();
        if (!fits) {
            Optional<CountedService> of = nearest(expected, GESTATION_ERROR_DAYS);
            findings.add(Finding.on(of.map(CountedService::date).orElse(expected), FindingCode.CONCEPTION_INFERRED));
            if (now.isPresent()) {
                replaceCurrent(now.get()
                        .since(
                                of.map(CountedService::date).orElse(expected),
                                Known.INFERRED,
                                of.map(CountedService::sireBreed).orElse("")));
                services.replaceAll(service -> service.outcome() == Outcome.PREGNANT
                                && service.date().equals(now.get().conception().orElse(null))
                        ? service.withOutcome(Outcome.OPEN)
                        : service);
                of.ifPresent(service -> services.set(services.indexOf(service), service.withOutcome(Outcome.PREGNANT)));
            } else {
                conceived(of, Optional.of(expected), Optional.empty(), Known.INFERRED);
            }
        }
        replaceCurrent(current().orElseThrow().calved(day));
        settle(service -> true, Outcome.OPEN);
    }

    private void conceived(
            Optional<CountedService> of, Optional<LocalDate> byAge, Optional<LocalDate> confirmedOn, Known without) {
        Optional<LocalDate> conception = of.map(CountedService::date).or(() -> byAge);
        Known known = of.isEmpty() ? without : confirmedOn.isPresent() ? Known.SERVICE : Known.INFERRED;
        pregnancies.add(new Pregnancy(
                conception,
                known,
                of.map(CountedService::sireBreed).orElse(""),
                confirmedOn,
                confirmedOn.isPresent() ? 1 : 0,
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        of.ifPresent(service -> services.set(services.indexOf(service), service.withOutcome(Outcome.PREGNANT)));
        conception.ifPresent(day -> {
            settle(service -> service.date().isBefore(day), Outcome.OPEN);
            settle(service -> service.date().isAfter(day), Outcome.WHILE_PREGNANT);
        });
        if (conception.isEmpty()) {
            confirmedOn.ifPresent(day -> findings.add(Finding.on(day, FindingCode.CONCEPTION_DATE_UNKNOWN)));
        }
    }

    private LocalDate lastLoss() {
        return pregnancies.isEmpty()
                ? LocalDate.MIN
                : pregnancies.get(pregnancies.size() - 1).lostOn().orElse(LocalDate.MIN);
    }

    private Optional<CountedService> latest(LocalDate notAfter) {
        return services.stream()
                .filter(service -> service.outcome() == Outcome.UNKNOWN || service.outcome() == Outcome.OPEN)
                .filter(service ->
                        !service.date().isAfter(notAfter) && !service.date().isBefore(lastLoss()))
                .max(Comparator.comparing(CountedService::date));
    }

    private Optional<CountedService> nearest(LocalDate day, int withinDays) {
        return services.stream()
                .filter(service -> service.outcome() != Outcome.PREGNANT)
                .filter(service -> daysApart(service.date(), day) <= withinDays)
                .min(Comparator.comparingLong((CountedService service) -> daysApart(service.date(), day))
                        .thenComparing(CountedService::date));
    }

    private static long daysApart(LocalDate one, LocalDate other) {
        return Math.abs(ChronoUnit.DAYS.between(one, other));
    }
}
