package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.pailbook.records.wire.MergePatch;

/**
 * What a request makes of one known record.
 *
 * @param change from the record as it would be posted to the one that takes its place
 * @param cleared members named only to clear them
 */
public record Edit(UnaryOperator<ObjectNode> change, Set<String> cleared) {
    /** Another content, whatever was there. */
    public static Edit whole(ObjectNode content) {
        return new Edit(any -> content, Set.of());
    }

    /** The same content but for what the patch names. */
    public static Edit merging(MergePatch patch) {
        return new Edit(patch::appliedTo, patch.cleared());
    }
}
