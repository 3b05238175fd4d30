package org.pailbook.lactation;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.pailbook.lactation.method.PublishedMethod;

/** Which package of the library may import which; the table of DEVELOPERS.md, held by the build. */
class LibraryArchitectureTest {
    private static final String BASE = "org.pailbook.lactation.";
    private static final JavaClasses LIBRARY = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.pailbook.lactation");

    /** Package, then the other packages of the library it may import directly. */
    private static final Map<String, String[]> MAY_IMPORT = Map.ofEntries(
            Map.entry("sentence", new String[] {}),
            Map.entry("finding", new String[] {"sentence"}),
            Map.entry("method", new String[] {}),
            Map.entry("internal", new String[] {}),
            Map.entry("figure", new String[] {"sentence", "finding", "method"}),
            Map.entry("day", new String[] {"sentence", "finding", "method"}),
            Map.entry("event", new String[] {"sentence", "finding", "method", "day"}),
            Map.entry("testday", new String[] {"sentence", "finding", "method", "figure", "day", "event"}),
            Map.entry("reference", new String[] {"sentence", "finding", "method", "figure", "day"}),
            Map.entry("correctedmilk", new String[] {"sentence", "finding", "method", "figure", "testday", "day"}),
            Map.entry("accumulation", new String[] {"sentence", "finding", "method", "figure", "day", "testday"}),
            Map.entry("curve", new String[] {
                "sentence", "finding", "method", "figure", "day", "testday", "reference", "internal"
            }),
            Map.entry("persistency", new String[] {
                "sentence", "finding", "method", "figure", "day", "testday", "curve", "accumulation"
            }),
            Map.entry("projection", new String[] {
                "sentence",
                "finding",
                "method",
                "figure",
                "day",
                "testday",
                "curve",
                "accumulation",
                "reference",
                "internal"
            }),
            Map.entry(
                    "udderhealth", new String[] {"sentence", "finding", "method", "figure", "day", "testday", "event"}),
            Map.entry("culling", new String[] {
                "sentence", "finding", "method", "figure", "day", "breeding", "correctedmilk", "curve", "internal"
            }),
            Map.entry("breeding", new String[] {"sentence", "finding", "method", "figure", "day", "event", "internal"}),
            Map.entry("withheld", new String[] {"sentence", "day", "event"}),
            Map.entry("summary", new String[] {
                "sentence",
                "finding",
                "method",
                "figure",
                "day",
                "testday",
                "event",
                "reference",
                "correctedmilk",
                "accumulation",
                "curve",
                "persistency",
                "projection",
                "udderhealth",
                "internal"
            }));

    @TestFactory
    Stream<DynamicTest> everyPackageImportsOnlyWhatTheTableAllows() {
        return MAY_IMPORT.entrySet().stream()
                .map(row -> DynamicTest.dynamicTest(
                        row.getKey(),
                        () -> classes()
                                .that()
                                .resideInAPackage(BASE + row.getKey() + "..")
                                .should()
                                .onlyDependOnClassesThat()
                                .resideInAnyPackage(allowed(row.getKey(), row.getValue()))
                                .because("imports go one way: see the package table in DEVELOPERS.md")
                                .allowEmptyShould(true)
                                .check(LIBRARY)));
    }

    private static String[] allowed(String self, String... others) {
        Stream<String> ours =
                Stream.concat(Stream.of(self), Arrays.stream(others)).map(name -> BASE + name + "..");
        Stream<String> commonsMath = self.equals("internal") ? Stream.of("org.apache.commons.math3..") : Stream.empty();
        return Stream.of(Stream.of("java.."), commonsMath, ours)
                .flatMap(stream -> stream)
                .toArray(String[]::new);
    }

    @Test
    void everyPackageStandsInTheTable() {
        assertThat(LIBRARY.stream()
                        .map(JavaClass::getPackageName)
                        .map(name -> name.substring(BASE.length()).split("\\.")[0])
                        .distinct())
                .isSubsetOf(MAY_IMPORT.keySet());
    }

    @Test
    void packagesHaveNoCycles() {
        slices().matching(BASE + "(*)..")
                .should()
                .beFreeOfCycles()
                .because("a package that needs its own user cannot be read, tested or replaced alone")
                .check(LIBRARY);
    }

    @Test
    void theLibraryHasNoClockNoConsoleAndNoDefaultZone() {
        noClasses()
                .should()
                .callMethod(LocalDate.class, "now")
                .orShould()
                .callMethod(LocalDateTime.class, "now")
                .orShould()
                .callMethod(ZonedDateTime.class, "now")
                .orShould()
                .callMethod(Instant.class, "now")
                .orShould()
                .callMethod(Clock.class, "systemDefaultZone")
                .orShould()
                .callMethod(ZoneId.class, "systemDefault")
                .orShould()
                .callMethod(Locale.class, "getDefault")
                .orShould()
                .callMethod(System.class, "currentTimeMillis")
                .orShould()
                .callMethod(System.class, "nanoTime")
                .orShould()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .because("the same input must give the same figure on every machine and day")
                .check(LIBRARY);
    }

    @Test
    void publishedMethodsAreFinal() {
        classes()
                .that()
                .implement(PublishedMethod.class)
                .and()
                .areNotInterfaces()
                .and()
                .doNotHaveModifier(JavaModifier.ABSTRACT)
                .should()
                .haveModifier(JavaModifier.FINAL)
                .because("one class, one published method: a variant gets a class and a name of its own")
                .allowEmptyShould(true)
                .check(LIBRARY);
    }
}
