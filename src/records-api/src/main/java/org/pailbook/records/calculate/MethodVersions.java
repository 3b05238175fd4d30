package org.pailbook.records.calculate;

import jakarta.inject.Singleton;
import java.util.stream.Collectors;
import org.pailbook.records.wire.OutputVersion;

/** The versions of all methods of the library together. */
@Singleton
final class MethodVersions implements OutputVersion {
    @Override
    public String text() {
        return MethodCatalogue.BY_KIND.values().stream()
                .flatMap(methods -> methods.stream().map(method -> method.id() + "/" + method.version()))
                .distinct()
                .sorted()
                .collect(Collectors.joining(" "));
    }
}
