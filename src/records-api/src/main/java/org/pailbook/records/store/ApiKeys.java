package org.pailbook.records.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;

/** The keys. */
@ApplicationScoped
public class ApiKeys implements PanacheRepositoryBase<ApiKeyRow, String> {
    public Optional<ApiKeyRow> bySecretSha256(String hash) {
        return find("secretSha256", hash).firstResultOptional();
    }

    /** The key whose text was that one before its last rotation. */
    public Optional<ApiKeyRow> byPreviousSha256(String hash) {
        return find("previousSha256", hash).firstResultOptional();
    }
}
