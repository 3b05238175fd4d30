package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Secrets of the service itself, the same for every service on one database. */
@ApplicationScoped
public class ServiceSecrets {
    /** What signs places in lists. */
    public static final String CURSORS = "cursor";
    /** What signs sessions of the pages. */
    public static final String SESSIONS = "sessions";

    private static final int SECRET_BYTES = 32;

    private final WriteGate gate;
    private final Map<String, byte[]> known = new ConcurrentHashMap<>();

    @Inject
    ServiceSecrets(WriteGate gate) {
        this.gate = gate;
    }

    /** Has them all at hand, so that no reading later needs a write, which a full disk would refuse. */
    public void prepare() {
        of(CURSORS);
        of(SESSIONS);
    }

    /** The secret of that name, made when it is first asked for; 256 random bits. */
    public byte[] of(String name) {
        return known.computeIfAbsent(name, this::readOrMake).clone();
    }

    private byte[] readOrMake(String name) {
        byte[] made = new byte[SECRET_BYTES];
        new SecureRandom().nextBytes(made);
        String kept = gate.write(session -> {
            // of two services that start at once the second finds the secret of the first
            session.createNativeMutationQuery("insert into service_secret (name, secret_hex) values (:name, :secret)"
                            + " on conflict (name) do nothing")
                    .setParameter("name", name)
                    .setParameter("secret", HexFormat.of().formatHex(made))
                    .executeUpdate();
            return session.createNativeQuery("select secret_hex from service_secret where name = :name", String.class)
                    .setParameter("name", name)
                    .getSingleResult();
        });
        return HexFormat.of().parseHex(kept);
    }
}
