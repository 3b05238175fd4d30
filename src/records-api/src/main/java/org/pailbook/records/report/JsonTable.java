package org.pailbook.records.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** A report as one JSON object; what is not known is left out of its row. */
final class JsonTable implements Table {
    private final JsonGenerator json;
    private final String report;
    private final HerdRow herd;
    private final AsOf asOf;
    private List<String> members;

    JsonTable(JsonGenerator json, String report, HerdRow herd, AsOf asOf) {
        this.json = json;
        this.report = report;
        this.herd = herd;
        this.asOf = asOf;
    }

    @Override
    public void begin(List<? extends Column<?>> columns) throws IOException {
        members = columns.stream().map(Column::member).toList();
        json.writeStartObject();
        json.writeStringField("herd", herd.code);
        json.writeStringField("report", report);
        json.writeStringField("asOf", asOf.day().toString());
        json.writeStringField("knownAt", asOf.knownAtText());
        json.writeStringField("computedAt", asOf.computedAt().toString());
        json.writeArrayFieldStart("rows");
    }

    @Override
    public void row(Object[] cells) throws IOException {
        json.writeStartObject();
        for (int i = 0; i < cells.length; i++) {
            if (cells[i] != null) {
                json.writeFieldName(members.get(i));
                write(cells[i]);
            }
        }
        json.writeEndObject();
    }

    private void write(Object cell) throws IOException {
        if (cell instanceof BigDecimal decimal) {
            json.writeNumber(
                    decimal.signum() == 0 ? "0" : decimal.stripTrailingZeros().toPlainString());
        } else if (cell instanceof Integer whole) {
            json.writeNumber(whole);
        } else if (cell instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else {
            json.writeString(cell.toString());
        }
    }

    @Override
    public void end() throws IOException {
        json.writeEndArray();
        json.writeEndObject();
        json.flush();
    }
}
