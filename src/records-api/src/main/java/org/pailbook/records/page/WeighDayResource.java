package org.pailbook.records.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.smallrye.common.annotation.Blocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.entry.EntryChoice;
import org.pailbook.records.entry.SheetCell;
import org.pailbook.records.entry.WeighDaySheets;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.LimitedBody;
import org.pailbook.records.wire.StrictJson;

/** The page on which a weigh day is typed: as a plain form, or row by row by the page's script. */
@Path("/pages/herds/{herd}/weigh-day")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class WeighDayResource {
    private static final int MOST_ROWS = 100;

    private final WeighDayDesk desk;
    private final WeighDaySheets sheets;
    private final SheetEntry entry;

    @Inject
    WeighDayResource(WeighDayDesk desk, WeighDaySheets sheets, SheetEntry entry) {
        this.desk = desk;
        this.sheets = sheets;
        this.entry = entry;
    }

    @GET
    @Operation(hidden = true)
    public Response getSheet(
            @PathParam("herd") String herdCode,
            @BeanParam PageQuery query,
            @QueryParam("page") String page,
            @QueryParam("saved") String saved) {
        Shown shown = desk.toRead(herdCode, query);
        return sheet(shown, PageQuery.number("page", page, 1), Map.of(), PageQuery.number("saved", saved, 0), 200);
    }

    private Response sheet(
            Shown shown, int part, Map<String, Map<SheetCell, SheetEntry.Told>> told, int saved, int status) {
        EntryChoice choice = desk.choice(shown.herd());
        WeighDayPage page = WeighDayPage.of(
                shown, shown.mayWrite(), choice, sheets.of(shown.herd(), shown.asOf(), choice, part), told, saved);
        return PageResource.htmlWithScript(Templates.weighDay(page), status);
    }

    /** The whole sheet as a browser without script sends it. */
    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response postSheet(@PathParam("herd") String herdCode, InputStream body) {
        HerdRow herd = desk.toWrite(herdCode);
        FormFields form = FormFields.read(body);
        Shown shown = desk.shown(herd, form);
        SheetEntry.On sheet = on(shown, WeighDayDesk.milkings(form.required("milkings")));
        Map<String, Map<SheetCell, SheetEntry.Told>> told = entry.take(sheet, changed(form, sheet.units()));
        int part = PageQuery.number("page", form.text("page").orElse(null), 1);
        boolean isPlain = told.values().stream()
                .flatMap(row -> row.values().stream())
                .allMatch(cell -> cell.isSaved() && cell.message().isEmpty());
        if (isPlain) {
            return PageResource.to(
                    shown.numbered("/weigh-day", part) + (told.isEmpty() ? "" : "&saved=" + told.size()));
        }
        boolean isSaved =
                told.values().stream().flatMap(row -> row.values().stream()).allMatch(SheetEntry.Told::isSaved);
        return sheet(shown, part, told, told.size(), isSaved ? 200 : PageResource.NOT_ACCEPTED);
    }

    /** Rows in which something was typed. */
    private static Map<String, Map<SheetCell, SheetEntry.Typed>> changed(FormFields form, SheetUnits units) {
        Map<String, Map<SheetCell, SheetEntry.Typed>> rows = new LinkedHashMap<>();
        for (String name : form.names()) {
            String[] parts = name.split("\\.");
            if (parts.length != 3 || !parts[0].equals("c")) {
                continue;
            }
            SheetCell cell = SheetCell.of(parts[2]).orElseThrow(() -> WeighDayDesk.noSuchField(name));
            SheetEntry.Typed typed = new SheetEntry.Typed(
                    form.text(name).orElse(""),
                    form.text(SheetUnits.seenName(cell, parts[1])).orElse(""));
            boolean isAsSeen = typed.seenValue()
                    .map(seen -> units.shown(cell, seen))
                    .orElse("")
                    .equals(typed.text());
            if (!isAsSeen) {
                rows.computeIfAbsent(parts[1], any -> new EnumMap<>(SheetCell.class))
                        .put(cell, typed);
            }
        }
        return rows;
    }

    /** Some rows as the script sends them: each field with what was typed and what stood there. */
    @POST
    @Path("/rows")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(hidden = true)
    public Response postRows(@PathParam("herd") String herdCode, InputStream body) {
        HerdRow herd = desk.toWrite(herdCode);
        ObjectNode sent = StrictJson.object(new LimitedBody(body, LimitedBody.ONE_RECORD));
        Shown shown = desk.shown(
                herd, PageQuery.of(sent.path("date").asText(), sent.path("unit").asText()));
        SheetEntry.On sheet =
                on(shown, WeighDayDesk.milkings(sent.path("milkings").asText()));
        Map<String, Map<SheetCell, SheetEntry.Typed>> rows = new LinkedHashMap<>();
        if (sent.path("rows").size() > MOST_ROWS) {
            throw new Problem(ProblemCode.TOO_LARGE, "Send at most " + MOST_ROWS + " rows at once.");
        }
        for (JsonNode row : sent.path("rows")) {
            Map<SheetCell, SheetEntry.Typed> cells =
                    rows.computeIfAbsent(row.path("animal").asText(), any -> new EnumMap<>(SheetCell.class));
            row.path("cells").properties().forEach(field -> {
                SheetCell cell =
                        SheetCell.of(field.getKey()).orElseThrow(() -> WeighDayDesk.noSuchField(field.getKey()));
                cells.put(
                        cell,
                        new SheetEntry.Typed(
                                field.getValue().path("typed").asText("").strip(),
                                field.getValue().path("seen").asText("")));
            });
        }
        return Response.ok(answer(entry.take(sheet, rows), sheet.units()).toString(), MediaType.APPLICATION_JSON)
                .build();
    }

    private static ObjectNode answer(Map<String, Map<SheetCell, SheetEntry.Told>> told, SheetUnits units) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        ObjectNode rows = answer.putObject("rows");
        told.forEach((animal, cells) -> {
            ObjectNode row = rows.putObject(animal);
            cells.forEach((cell, one) -> row.putObject(cell.wireName())
                    .put("state", one.state().name().toLowerCase(Locale.ROOT))
                    .put("there", one.there())
                    .put("shown", one.there().isEmpty() ? "" : units.shown(cell, Double.parseDouble(one.there())))
                    .put("message", one.message()));
        });
        return answer;
    }

    private SheetEntry.On on(Shown shown, int milkings) {
        return new SheetEntry.On(shown.herd(), shown.asOf(), milkings, new SheetUnits(shown.unit()), desk.keyId());
    }
}
