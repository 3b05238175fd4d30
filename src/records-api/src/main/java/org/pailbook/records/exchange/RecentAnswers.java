package org.pailbook.records.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * The texts of computed answers given lately, by entity tag. A tag names everything an answer is made from, the herd's last change
 * included, so that a text is never out of date: it is only dropped for others, the one asked for longest ago first.
 */
@ApplicationScoped
public class RecentAnswers {
    private static final long MEGA = 1L << 20;
    /** One answer takes no more than this share of the room. */
    private static final int LEAST_ANSWERS = 3;

    private final long room;
    private final Map<String, String> byTag = new LinkedHashMap<>(16, 0.75f, true);
    private final Map<String, Object> beingMade = new ConcurrentHashMap<>();
    private long held;

    /** @param megabytes about as much memory is held at most; texts are of one byte a character, names in other scripts of two */
    @Inject
    RecentAnswers(@ConfigProperty(name = "pailbook.answers.kept.mb") int megabytes) {
        this.room = megabytes * MEGA;
    }

    /**
     * The text of that tag: the one kept, else made now. Who asks for one that is being made waits for it, so that many who ask for the same
     * at once cost no more time and memory than one.
     */
    String findOrMake(String tag, Supplier<String> maker) {
        String kept = find(tag).orElse(null);
        if (kept != null) {
            return kept;
        }
        Object turn = beingMade.computeIfAbsent(tag, any -> new Object());
        try {
            synchronized (turn) {
                return find(tag).orElseGet(() -> {
                    String made = maker.get();
                    keep(tag, made);
                    return made;
                });
            }
        } finally {
            beingMade.remove(tag, turn);
        }
    }

    synchronized Optional<String> find(String tag) {
        return Optional.ofNullable(byTag.get(tag));
    }

    synchronized void keep(String tag, String text) {
        if (text.length() > room / LEAST_ANSWERS) {
            return;
        }
        String before = byTag.put(tag, text);
        held += text.length() - (before == null ? 0 : before.length());
        Iterator<String> oldest = byTag.values().iterator();
        while (held > room) {
            held -= oldest.next().length();
            oldest.remove();
        }
    }
}
