package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.pailbook.records.store.HerdRow;

/** Makes herds, for whoever takes the wish for one from elsewhere than a request of the API. */
public interface NewHerds {
    /**
     * Makes the herd; the same herd again changes nothing.
     *
     * @param body as posted to the API
     * @throws org.pailbook.records.problem.Problem if the body is wrong, or another herd has the code
     */
    HerdRow make(ObjectNode body, String writtenBy);
}
