package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A fresh service to which every example was sent, so that the invented herd of the examples is in it. */
record Story(FreshService service, ApiDocument document, List<ApiExample> examples, ShownAndReal ids)
        implements AutoCloseable {
    /** Code of the herd of the examples. */
    static final String HERD = "fernbrook";

    /** For tests that leave the herd of the examples as it is; told once, ended with the tests. */
    private static Story shared;

    static synchronized Story shared() throws IOException {
        if (shared == null) {
            Path data = Files.createTempDirectory(Files.createDirectories(Path.of("target", "contract")), "shared");
            Story story = tell(FreshService.Database.SQLITE, data);
            Runtime.getRuntime().addShutdownHook(new Thread(story.service().service()::close));
            shared = story;
        }
        return shared;
    }

    static Story tell(FreshService.Database database, Path data) throws IOException {
        ApiDocument document = ApiDocument.committed();
        List<ApiExample> examples = ExampleOrder.of(document);
        FreshService service = FreshService.start(database, data);
        ShownAndReal ids = new ShownAndReal();
        for (ApiExample example : examples) {
            ApiCaller.Heard heard = service.caller().send(example, ids);
            if (example.answer() != null && heard.mediaType().endsWith("json")) {
                ids.differences(example.answer(), heard.json(), example.shortened());
            }
        }
        return new Story(service, document, examples, ids);
    }

    /** Examples whose answer is none of a refusal, of operations with or without a herd in the path. */
    List<ApiExample> good(boolean inHerd) {
        return examples.stream()
                .filter(example -> example.status() != null && example.status().startsWith("2"))
                .filter(example -> example.operation().path().contains("{herd}") == inHerd)
                .toList();
    }

    /** A key of these scopes and herds. */
    String key(String scopes, String herds) {
        String body = "{\"label\":\"a test\",\"scopes\":[\"" + scopes.replace(" ", "\",\"") + "\"],\"herds\":[\""
                + herds + "\"]}";
        ApiCaller.Heard made = service.caller().send("POST", "/v1/keys", "application/json", body, java.util.Map.of());
        assertThat(made.status()).as(made.text()).isEqualTo(201);
        return made.json().get("key").asText();
    }

    /** Everything that can be read of the herd, to be compared with later. */
    List<ApiCaller.Heard> everythingRead() {
        List<ApiCaller.Heard> read = new ArrayList<>();
        for (ApiExample example : good(true)) {
            if (example.operation().method().equals("GET")) {
                read.add(service.caller().send(example, ids));
            }
        }
        return read;
    }

    @Override
    public void close() throws IOException {
        service.close();
    }
}
