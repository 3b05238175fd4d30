package org.pailbook.records;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The borders inside the service, one rule a test. */
class ServiceArchitectureTest {
    private static final String ROOT = "org.pailbook.records";
    private static final String STORE = "..records.store..";
    private static final String PROBLEM = "..records.problem..";
    private static final String WIRE = "..records.wire..";
    private static final String INTAKE = "..records.intake..";
    private static final String EXCHANGE = "..records.exchange..";
    private static final String ACCESS = "..records.access..";
    private static final String COMPUTED = "..records.computed..";
    private static final String APP = "..records.app..";
    private static final String[] SLICES = {
        "..records.herd..",
        "..records.cow..",
        "..records.event..",
        "..records.testday..",
        "..records.milking..",
        "..records.breeding..",
        "..records.health..",
        "..records.tank..",
        "..records.price..",
        "..records.setting..",
        "..records.projection..",
        "..records.summary..",
        "..records.reproduction..",
        "..records.udder..",
        "..records.withheld..",
        "..records.culling..",
        "..records.calculate..",
        "..records.feed..",
        "..records.report..",
        "..records.page..",
        "..records.key.."
    };

    private static final JavaClasses SERVICE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages(ROOT);

    @Test
    void onlyTheStoreSeesEntitiesAndTheirManager() {
        noClasses()
                .that()
                .resideOutsideOfPackage(STORE)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("jakarta.persistence..", "io.quarkus.hibernate..")
                .because("what is kept, and how it is asked for, has one home")
                .check(SERVICE);
    }

    @Test
    void onlyStoreIntakeAndWhatWritesThroughTheGateSeeHibernate() {
        noClasses()
                .that()
                .resideOutsideOfPackages(STORE, INTAKE)
                .and()
                .haveSimpleNameNotEndingWith("Kind")
                .and()
                .haveSimpleNameNotEndingWith("Intake")
                .and()
                .haveSimpleNameNotEndingWith("KeyStore")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.hibernate..")
                .because(
                        "the session of the write gate is for those who write: the intake, the kinds it takes, herds and keys")
                .check(SERVICE);
    }

    @Test
    void onlyResourcesFiltersProblemAndExchangeSeeHttp() {
        noClasses()
                .that()
                .resideOutsideOfPackages(PROBLEM, EXCHANGE)
                .and(areNotNamed("Resource", "Query", "Filter"))
                .should()
                .dependOnClassesThat()
                .resideInAPackage("jakarta.ws.rs..")
                .because("what a figure or a check is does not depend on how it was asked for")
                .check(SERVICE);
    }

    private static DescribedPredicate<JavaClass> areNotNamed(String... endings) {
        return DescribedPredicate.describe(
                "are not named " + String.join(", ", endings),
                type -> Set.of(endings).stream()
                        .noneMatch(ending -> outermost(type).getSimpleName().endsWith(ending)));
    }

    private static JavaClass outermost(JavaClass type) {
        return type.getEnclosingClass().map(ServiceArchitectureTest::outermost).orElse(type);
    }

    @Test
    void slicesDoNotKnowEachOther() {
        for (String slice : SLICES) {
            String[] others = java.util.Arrays.stream(SLICES)
                    .filter(one -> !one.equals(slice))
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage(slice)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(others)
                    .because("a slice can be read, changed and removed alone")
                    .check(SERVICE);
        }
    }

    @Test
    void problemKnowsNothingElseOfTheService() {
        noClasses()
                .that()
                .resideInAPackage(PROBLEM)
                .should()
                .dependOnClassesThat(areOfTheServiceOutside(PROBLEM))
                .because("everything can fail, so everything may depend on it")
                .check(SERVICE);
    }

    private static DescribedPredicate<JavaClass> areOfTheServiceOutside(String... packages) {
        return JavaClass.Predicates.resideInAPackage(ROOT + "..")
                .and(JavaClass.Predicates.resideOutsideOfPackages(packages));
    }

    @Test
    void wireKnowsOnlyProblemAndTheShapesOfFigures() {
        noClasses()
                .that()
                .resideInAPackage(WIRE)
                .should()
                .dependOnClassesThat(areOfTheServiceOutside(WIRE, PROBLEM)
                        .or(JavaClass.Predicates.resideInAPackage("org.pailbook.lactation..")
                                .and(JavaClass.Predicates.resideOutsideOfPackages(
                                        "..lactation.figure..", "..lactation.finding..", "..lactation.method.."))))
                .because("shapes several slices share must not draw in what one of them computes")
                .check(SERVICE);
    }

    @Test
    void theStoreDoesNotKnowWhoWritesOrReads() {
        noClasses()
                .that()
                .resideInAPackage(STORE)
                .should()
                .dependOnClassesThat(areOfTheServiceOutside(STORE, PROBLEM))
                .because("records outlive every way of sending and asking for them")
                .check(SERVICE);
    }

    @Test
    void theIntakeDoesNotKnowFilesOrKinds() {
        noClasses()
                .that()
                .resideInAPackage(INTAKE)
                .should()
                .dependOnClassesThat(areOfTheServiceOutside(INTAKE, STORE, WIRE, PROBLEM))
                .because("one record and a file of them are judged by the same code, whatever the kind")
                .check(SERVICE);
    }

    @Test
    void theExchangeDoesNotKnowTheKinds() {
        noClasses()
                .that()
                .resideInAPackage(EXCHANGE)
                .should()
                .dependOnClassesThat(areOfTheServiceOutside(EXCHANGE, INTAKE, ACCESS, STORE, WIRE, PROBLEM))
                .because("a new kind of record must get its files for nothing")
                .check(SERVICE);
    }

    @Test
    void computedFiguresDoNotKnowWhetherTheyWereStoredOrPosted() {
        noClasses()
                .that()
                .resideInAPackage(COMPUTED)
                .should()
                .dependOnClassesThat(areOfTheServiceOutside(COMPUTED, STORE, WIRE, PROBLEM))
                .because("the stored and the stateless addresses must answer alike")
                .check(SERVICE);
    }

    @Test
    void accessKnowsNoRecords() {
        noClasses()
                .that()
                .resideInAPackage(ACCESS)
                .should()
                .dependOnClassesThat(areOfTheServiceOutside(ACCESS, STORE, WIRE, PROBLEM))
                .because("who may see a herd is decided before anything of it is looked at")
                .check(SERVICE);
    }

    @Test
    void nobodyButTheStartDependsOnTheStart() {
        noClasses()
                .that()
                .resideOutsideOfPackage(APP)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(APP)
                .because("the start puts the parts together; no part may need it")
                .check(SERVICE);
    }

    @Test
    void timeIsTakenFromTheServiceClockOnly() {
        noClasses()
                .that()
                .doNotHaveFullyQualifiedName(ROOT + ".app.ServiceClock")
                .should()
                .callMethodWhere(
                        DescribedPredicate.describe("asks the machine for the time", call -> asksForTheTime(call)))
                .because("a test, and a repeated report, must be able to hold the clock")
                .check(SERVICE);
    }

    private static boolean asksForTheTime(JavaMethodCall call) {
        String owner = call.getTargetOwner().getFullName();
        String name = call.getName();
        return owner.startsWith("java.time.") && name.equals("now")
                || owner.equals("java.time.Clock") && name.startsWith("system")
                || owner.equals("java.time.ZoneId") && name.equals("systemDefault")
                || owner.equals("java.lang.System") && (name.equals("currentTimeMillis") || name.equals("nanoTime"));
    }

    @Test
    void onlyTheStartWritesToTheTerminal() {
        noClasses()
                .that()
                .resideOutsideOfPackage(APP)
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .because("the first key and where to look are for the terminal, all else for the log")
                .check(SERVICE);
    }

    @Test
    void entitiesNeverGoOutAsJson() {
        noClasses()
                .that()
                .areAnnotatedWith(jakarta.persistence.Entity.class)
                .or()
                .areAnnotatedWith(jakarta.persistence.MappedSuperclass.class)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("com.fasterxml.jackson..", "org.eclipse.microprofile.openapi..")
                .because("what is kept and what is shown change for different reasons (OWASP API3:2023)")
                .check(SERVICE);
    }

    @Test
    void resourcesHaveAPathOrSaySo() {
        classes()
                .that()
                .haveSimpleNameEndingWith("Resource")
                .and()
                .doNotHaveModifier(com.tngtech.archunit.core.domain.JavaModifier.ABSTRACT)
                .should()
                .beAnnotatedWith(jakarta.ws.rs.Path.class)
                .because("a reader looks for addresses in resources and nowhere else")
                .check(SERVICE);
    }

    @Test
    void packagesHaveNoCycles() {
        slices().matching("org.pailbook.records.(*)..")
                .should()
                .beFreeOfCycles()
                .because("packages that need each other are one package")
                .check(SERVICE);
    }
}
