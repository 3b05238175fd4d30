package org.pailbook.records.problem;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Which methods work at which address, read from the resources themselves.
 *
 * <p>The routing takes an address whose resource lacks the method for one it does not know, or refuses it without naming the methods it
 * has; RFC 9110 section 15.5.6 wants them in {@code Allow}.
 */
@Singleton
final class KnownRoutes {
    private record Route(Pattern path, String method) {}

    private final List<Route> routes = new ArrayList<>();

    @Inject
    KnownRoutes(BeanManager beans) {
        for (Bean<?> bean : beans.getBeans(Object.class, Any.Literal.INSTANCE)) {
            Path start = bean.getBeanClass().getAnnotation(Path.class);
            if (start != null) {
                for (Method method : bean.getBeanClass().getMethods()) {
                    add(start.value(), method);
                }
            }
        }
    }

    private void add(String start, Method method) {
        for (Annotation annotation : method.getAnnotations()) {
            HttpMethod verb = annotation.annotationType().getAnnotation(HttpMethod.class);
            if (verb != null) {
                Path rest = method.getAnnotation(Path.class);
                String template = start + (rest == null ? "" : rest.value());
                routes.add(new Route(Pattern.compile(template.replaceAll("\\{[^/]+?}", "[^/]+")), verb.value()));
            }
        }
    }

    /** The methods that work at that address; none if it is unknown. */
    Set<String> methodsAt(String path) {
        Set<String> methods = new TreeSet<>();
        for (Route route : routes) {
            if (route.path().matcher(path).matches()) {
                methods.add(route.method());
                if (route.method().equals(HttpMethod.GET)) {
                    methods.add(HttpMethod.HEAD);
                }
            }
        }
        return methods;
    }
}
