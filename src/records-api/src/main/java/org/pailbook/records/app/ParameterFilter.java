package org.pailbook.records.app;

import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.MultivaluedMap;
import java.lang.annotation.Annotation;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.NearestName;

/**
 * Refuses query parameters that the address does not know, repeated ones and empty ones: a misspelt {@code asof} would else give a
 * plausible wrong figure.
 */
final class ParameterFilter {
    private final Map<Method, Set<String>> known = new ConcurrentHashMap<>();

    @ServerRequestFilter
    void refuseUnknown(ContainerRequestContext request, ResourceInfo resource) {
        MultivaluedMap<String, String> sent = request.getUriInfo().getQueryParameters();
        if (sent.isEmpty()) {
            return;
        }
        Set<String> allowed = known.computeIfAbsent(resource.getResourceMethod(), ParameterFilter::parametersOf);
        List<Fault> faults = new ArrayList<>();
        sent.forEach((name, values) -> {
            String shown = Fault.shorten(name);
            if (!allowed.contains(name)) {
                String nearest = NearestName.to(name, allowed);
                faults.add(Fault.inParameter(
                        shown,
                        "unknown-parameter",
                        nearest == null ? "is not known here" : "is not known here; did you mean " + nearest + "?"));
            } else if (values.size() > 1) {
                faults.add(Fault.inParameter(shown, "repeated-parameter", "was sent more than once"));
            } else if (values.get(0).isBlank()) {
                // an empty asOf would otherwise be taken for today
                faults.add(Fault.inParameter(shown, "bad-parameter", "is empty; leave it out if it is not wanted"));
            }
        });
        if (!faults.isEmpty()) {
            throw new Problem(
                    faults.stream().allMatch(fault -> fault.code().equals("bad-parameter"))
                            ? ProblemCode.BAD_PARAMETER
                            : ProblemCode.UNKNOWN_PARAMETER,
                    allowed.isEmpty()
                            ? "This address takes no parameters."
                            : "Known: " + String.join(", ", allowed) + ".",
                    faults);
        }
    }

    private static Set<String> parametersOf(Method method) {
        Set<String> names = new TreeSet<>();
        for (Parameter parameter : method.getParameters()) {
            for (Annotation annotation : parameter.getAnnotations()) {
                if (annotation instanceof QueryParam query) {
                    names.add(query.value());
                } else if (annotation instanceof BeanParam) {
                    for (Class<?> type = parameter.getType(); type != null; type = type.getSuperclass()) {
                        addParameters(type, names);
                    }
                }
            }
        }
        return names;
    }

    private static void addParameters(Class<?> type, Set<String> names) {
        for (Field field : type.getDeclaredFields()) {
            QueryParam query = field.getAnnotation(QueryParam.class);
            if (query != null) {
                names.add(query.value());
            }
        }
    }
}
