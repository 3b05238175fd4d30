package org.pailbook.records.calculate;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.testday.AbnormalTestDays;

class MethodCatalogueArchitectureTest {
    private static final List<PublishedMethod> LISTED =
            MethodCatalogue.BY_KIND.values().stream().flatMap(List::stream).toList();

    @Test
    void everyMethodClassOfTheLibraryIsListed() {
        Set<String> methods = new ClassFileImporter()
                        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                        .importPackages("org.pailbook.lactation")
                        .stream()
                        .filter(type -> type.isAssignableTo(PublishedMethod.class))
                        .filter(type ->
                                !type.isInterface() && !type.getModifiers().contains(JavaModifier.ABSTRACT))
                        .map(JavaClass::getName)
                        .collect(Collectors.toSet());
        assertThat(methods).hasSizeGreaterThan(20).contains(AbnormalTestDays.class.getName());
        // made from a herd's tests only: there is none to show without a herd
        methods.remove(AbnormalTestDays.class.getName());
        assertThat(LISTED.stream().map(method -> method.getClass().getName()).collect(Collectors.toSet()))
                .isEqualTo(methods);
    }

    @Test
    void noNameStandsForTwoMethods() {
        assertThat(LISTED).extracting(PublishedMethod::id).doesNotHaveDuplicates();
    }
}
