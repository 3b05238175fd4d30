package org.pailbook.records.app;

import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;

/** What may stand in a patch of a record: each of its members, none needed, null to clear one (RFC 7396). */
final class ApiPatch {
    private ApiPatch() {}

    /** Name of the schema of a patch of that record, which is added if it is not there yet. */
    static String of(OpenAPI api, String record) {
        String name = record + "Patch";
        if (!api.getComponents().getSchemas().containsKey(name)) {
            Schema patch = OASFactory.createSchema()
                    .addType(Schema.SchemaType.OBJECT)
                    .description("The members of " + record + " to change; null clears one that is not needed");
            api.getComponents()
                    .getSchemas()
                    .get(record)
                    .getProperties()
                    .forEach((member, schema) -> patch.addProperty(member, orNull(schema)));
            api.getComponents().addSchema(name, patch);
        }
        return name;
    }

    private static Schema orNull(Schema schema) {
        return OASFactory.createSchema()
                .addAnyOf(schema)
                .addAnyOf(OASFactory.createSchema().addType(Schema.SchemaType.NULL));
    }
}
