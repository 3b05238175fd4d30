package org.pailbook.records.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.examples.Example;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;

/**
 * Puts the examples of the folder {@code openapi-examples} into the description. All examples of one file have the same name everywhere
 * they stand: in the parameters, in the body, in the answer; so whoever reads the description can send it again.
 */
final class ApiExamples {
    void addTo(OpenAPI api) {
        for (ExampleFile example : ExampleFile.all()) {
            Operation operation = api.getPaths().getPathItems().values().stream()
                    .flatMap(item -> item.getOperations().values().stream())
                    .filter(one -> example.operationId().equals(one.getOperationId()))
                    .findFirst()
                    .orElseThrow(() -> example.wrong("no operation has the id " + example.operationId()));
            addParameters(operation, example);
            addBody(operation, example);
            addAnswer(operation, example);
        }
    }

    private static void addParameters(Operation operation, ExampleFile example) {
        add(operation, example, Parameter.In.PATH, example.path());
        add(operation, example, Parameter.In.QUERY, example.query());
        add(operation, example, Parameter.In.HEADER, example.headers());
    }

    private static void add(
            Operation operation, ExampleFile example, Parameter.In in, Map<String, String> valuesByName) {
        List<Parameter> parameters = operation.getParameters() == null ? new ArrayList<>() : operation.getParameters();
        valuesByName.forEach((name, value) -> {
            Parameter parameter = parameters.stream()
                    .filter(one -> one.getIn() == in && one.getName().equals(name))
                    .findFirst()
                    .orElseThrow(() -> example.wrong("the operation has no parameter " + name + " in " + in));
            // one example and several named ones may not stand beside each other
            parameter.setExample(null);
            parameter.addExample(example.name(), shown(example, value));
        });
    }

    private static void addBody(Operation operation, ExampleFile example) {
        if (example.body() == null) {
            return;
        }
        if (operation.getRequestBody() == null) {
            throw example.wrong("the operation takes no body");
        }
        MediaType form = form(operation.getRequestBody().getContent(), example.contentType(), example);
        form.setExample(null);
        Example shown = shown(example, example.body());
        if (!example.moving().isEmpty()) {
            shown.setDescription("Send a date ahead of your day");
            shown.addExtension("x-moving", example.moving());
        }
        form.addExample(example.name(), shown);
    }

    private static void addAnswer(Operation operation, ExampleFile example) {
        if (example.response() == null) {
            return;
        }
        APIResponse answer = ApiRefusals.ownOf(operation, example.status());
        if (answer == null) {
            throw example.wrong("the operation has no answer of status " + example.status());
        }
        Example shown = shown(example, example.response());
        if (!example.shortened().isEmpty()) {
            shown.setDescription("Shortened: the real answer has more entries");
            shown.addExtension("x-shortened", example.shortened());
        }
        MediaType form = form(answer.getContent(), example.responseType(), example);
        form.addExample(example.name(), shown);
    }

    private static MediaType form(Content content, String mediaType, ExampleFile example) {
        MediaType form = content == null ? null : content.getMediaType(mediaType);
        if (form == null) {
            throw example.wrong("the operation has no body of the type " + mediaType);
        }
        return form;
    }

    private static Example shown(ExampleFile example, Object value) {
        Example shown = OASFactory.createExample().value(value);
        if (example.summary() != null) {
            shown.setSummary(example.summary());
        }
        return shown;
    }
}
