package org.pailbook.records.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;

/** The feeds. */
@ApplicationScoped
public class Feeds implements PanacheRepositoryBase<FeedRow, String> {
    public Optional<FeedRow> byTokenSha256(String hash) {
        return find("tokenSha256", hash).firstResultOptional();
    }

    /** In the order in which they were made, after {@code afterId}; of every key if {@code keyId} is null. */
    public List<FeedRow> page(String keyId, String afterId, int most) {
        var found = keyId == null
                ? find("id > ?1 order by id", afterId)
                : find("id > ?1 and keyId = ?2 order by id", afterId, keyId);
        return found.page(0, most).list();
    }
}
