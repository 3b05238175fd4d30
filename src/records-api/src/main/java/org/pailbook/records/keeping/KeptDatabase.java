package org.pailbook.records.keeping;

import java.nio.file.Path;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigValue;

/** The database the settings name. */
public interface KeptDatabase {
    /** Number of the newest migration this build knows; a test holds it against the scripts. */
    int NEWEST_SCHEMA = 70;

    /** How the settings begin when they leave the address to the kind of database. */
    String USUAL_ADDRESS = "${pailbook.url";

    /** @throws Refusal if the settings name a database of another kind than the package is built for */
    static KeptDatabase of(Config settings) throws Refusal {
        String kind = PackagedKind.of(settings);
        ConfigValue given = settings.getConfigValue("quarkus.datasource.jdbc.url");
        String url = given.getRawValue().startsWith(USUAL_ADDRESS)
                ? settings.getValue("pailbook.url." + kind, String.class)
                : given.getValue();
        if (!url.startsWith("jdbc:" + kind + ":")) {
            throw new Refusal("this package is built for " + kind + ", but QUARKUS_DATASOURCE_JDBC_URL is "
                    + withoutParameters(url) + ". The package for postgresql is quarkus-app-postgresql/quarkus-run.jar,"
                    + " the one for sqlite quarkus-app/quarkus-run.jar.");
        }
        return kind.equals("sqlite")
                ? new SqliteFile(url)
                : new PostgresqlServer(
                        url,
                        settings.getOptionalValue("quarkus.datasource.username", String.class)
                                .orElse(""),
                        settings.getOptionalValue("quarkus.datasource.password", String.class)
                                .orElse(""));
    }

    /** @throws Refusal if the service cannot work with it: not to be reached, damaged, or of a newer version */
    void check() throws Refusal;

    /**
     * Writes a copy of everything as of now, while others may read and write.
     *
     * @param file must not be there yet
     */
    void backup(Path file) throws Refusal;

    /**
     * Puts a copy in place; nobody may use the database meanwhile.
     *
     * @param replace whether what is there may go
     * @return what became of the database that was there, in words
     */
    String restore(Path file, boolean replace) throws Refusal;

    /** An address as it may be shown: parameters can hold a password. */
    private static String withoutParameters(String url) {
        int mark = url.indexOf('?');
        return mark < 0 ? url : url.substring(0, mark);
    }

    /** @throws Refusal if a newer build has changed that schema */
    static void requireKnown(int schema, String what) throws Refusal {
        if (schema > NEWEST_SCHEMA) {
            throw new Refusal(what + " has schema version " + schema + ", and this build knows up to " + NEWEST_SCHEMA
                    + "; take the newer build that wrote it.");
        }
    }
}
