package org.pailbook.records.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** The herds. */
@ApplicationScoped
public class Herds implements PanacheRepositoryBase<HerdRow, String> {
    private static final Pattern CODE = Pattern.compile("[a-z0-9-]{1,40}");

    /** Whether a text could be the code of a herd. */
    public static boolean isCode(String text) {
        return CODE.matcher(text).matches();
    }

    public Optional<HerdRow> byCode(String code) {
        return find("code", code).firstResultOptional();
    }

    /** In order of code, after {@code afterCode}. */
    public List<HerdRow> pageAll(String afterCode, int most) {
        return find("code > ?1 order by code", afterCode).page(0, most).list();
    }

    public List<HerdRow> pageOf(Collection<String> codes, String afterCode, int most) {
        return find("code in ?1 and code > ?2 order by code", codes, afterCode)
                .page(0, most)
                .list();
    }
}
