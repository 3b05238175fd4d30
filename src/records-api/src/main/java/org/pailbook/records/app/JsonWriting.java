package org.pailbook.records.app;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import java.io.IOException;

/** How answers are written: dates as text, and a cell count posted as 84 comes back as 84 and not as 84.0. */
@Singleton
class JsonWriting implements ObjectMapperCustomizer {
    /** Beyond this a double no longer holds every whole number. */
    private static final double LARGEST_EXACT = 9e15;

    @Override
    public void customize(ObjectMapper mapper) {
        mapper.disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS);
        WholeNumbers whole = new WholeNumbers();
        mapper.registerModule(
                new SimpleModule("pailbook").addSerializer(Double.class, whole).addSerializer(double.class, whole));
    }

    private static final class WholeNumbers extends StdSerializer<Double> {
        private static final long serialVersionUID = 1L;

        WholeNumbers() {
            super(Double.class);
        }

        @Override
        public void serialize(Double value, JsonGenerator json, SerializerProvider provider) throws IOException {
            if (value == Math.rint(value) && Math.abs(value) < LARGEST_EXACT) {
                json.writeNumber(value.longValue());
            } else {
                json.writeNumber(value);
            }
        }
    }
}
