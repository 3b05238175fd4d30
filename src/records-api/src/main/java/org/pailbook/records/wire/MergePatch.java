package org.pailbook.records.wire;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * A change to a record that names only what changes: null clears a member, an object is merged, everything else replaces.
 *
 * @see "RFC 7396, JSON Merge Patch"
 */
public record MergePatch(ObjectNode changes) {
    public static final String MEDIA_TYPE = "application/merge-patch+json";

    /** What the patch makes of a record; the record itself is left as it is. */
    public ObjectNode appliedTo(ObjectNode record) {
        return merged(record.deepCopy(), changes);
    }

    private static ObjectNode merged(ObjectNode target, ObjectNode patch) {
        patch.properties().forEach(member -> {
            JsonNode value = member.getValue();
            if (value.isNull()) {
                target.remove(member.getKey());
            } else if (value instanceof ObjectNode inner) {
                JsonNode there = target.get(member.getKey());
                ObjectNode base = there instanceof ObjectNode object ? object : target.objectNode();
                target.set(member.getKey(), merged(base, inner));
            } else {
                target.set(member.getKey(), value);
            }
        });
        return target;
    }

    /** The members it clears; after the merge nothing shows any more which they were. */
    public Set<String> cleared() {
        return changes.properties().stream()
                .filter(member -> member.getValue().isNull())
                .map(Map.Entry::getKey)
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
