package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.common.TestResourceScope;
import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Locale;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

@QuarkusTest
@WithTestResource(value = DatabaseForTests.class, scope = TestResourceScope.GLOBAL)
class DatabaseContractTest {
    @ConfigProperty(name = "quarkus.datasource.db-kind")
    String databaseKind;

    @Inject
    DataSource database;

    @Test
    void theServiceIsBuiltForTheDatabaseThisRunAsksFor() {
        assertThat(databaseKind).isEqualTo(DatabaseForTests.askedFor());
    }

    @Test
    void theDatabaseBehindTheServiceIsOfThatKind() throws SQLException {
        try (Connection connection = database.getConnection()) {
            assertThat(connection.getMetaData().getDatabaseProductName().toLowerCase(Locale.ROOT))
                    .isEqualTo(DatabaseForTests.askedFor());
        }
    }

    @Test
    void aHerdThatWasMadeIsThereOnceAndCanBeFetched() {
        TestHerd herd = TestHerd.make();
        assertThat(herd.get("").expecting(200).textAt("/timeZone")).isEqualTo("Europe/Dublin");
        long before = StoredRows.in(database).counts().get("herd");
        herd.send(
                        "POST",
                        "/v1/herds",
                        TestHerd.JSON,
                        "{\"code\":\"%s\",\"name\":\"Herd %s\",\"timeZone\":\"Europe/Dublin\"}"
                                .formatted(herd.code(), herd.code()))
                .expecting(200);
        assertThat(StoredRows.in(database).counts().get("herd")).isEqualTo(before);
    }
}
