package org.pailbook.records.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.InputStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.entry.DayTotals;
import org.pailbook.records.entry.EntryChoice;
import org.pailbook.records.entry.SheetChoices;
import org.pailbook.records.entry.SheetOrder;
import org.pailbook.records.entry.SheetRow;
import org.pailbook.records.entry.WeighDaySheets;
import org.pailbook.records.store.HerdRow;

/** How the sheet of a weigh day is to look, in which order the cows come, and their milk against the tank. */
@Path("/pages/herds/{herd}/weigh-day")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class WeighDayChoiceResource {
    private final WeighDayDesk desk;
    private final WeighDaySheets sheets;
    private final SheetChoices choices;
    private final DayTotals totals;

    @Inject
    WeighDayChoiceResource(WeighDayDesk desk, WeighDaySheets sheets, SheetChoices choices, DayTotals totals) {
        this.desk = desk;
        this.sheets = sheets;
        this.choices = choices;
        this.totals = totals;
    }

    /** Keeps how the sheet is to look. */
    @POST
    @Path("/choice")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response postChoice(@PathParam("herd") String herdCode, InputStream body) {
        HerdRow herd = desk.toWrite(herdCode);
        FormFields form = FormFields.read(body);
        Shown shown = desk.shown(herd, form);
        SheetOrder order = SheetOrder.of(form.required("order")).orElseThrow(() -> WeighDayDesk.noSuchField("order"));
        choices.keep(
                herd,
                desk.keyId(),
                new EntryChoice(
                        order, WeighDayDesk.milkings(form.required("milkings")), form.has("samples"), List.of()));
        return PageResource.to(shown.page("/weigh-day"));
    }

    @GET
    @Path("/order")
    @Operation(hidden = true)
    public Response getOrder(@PathParam("herd") String herdCode, @BeanParam PageQuery query) {
        Shown shown = desk.toRead(herdCode, query);
        List<String> tags = sheets.order(shown.herd(), shown.asOf(), desk.choice(shown.herd())).stream()
                .map(row -> row.identifier().id())
                .toList();
        return order(shown, tags, List.of(), 200);
    }

    private Response order(Shown shown, List<String> tags, List<String> unknown, int status) {
        return PageResource.html(
                Templates.weighDayOrder(new WeighDayOrderPage(
                        shown, shown.mayWrite(), String.join("\n", tags), Math.min(30, tags.size() + 1), unknown)),
                status);
    }

    /** Keeps an order written down; nothing is kept while a line names no cow in milk. */
    @POST
    @Path("/order")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response postOrder(@PathParam("herd") String herdCode, InputStream body) {
        HerdRow herd = desk.toWrite(herdCode);
        FormFields form = FormFields.read(body);
        Shown shown = desk.shown(herd, form);
        Map<String, String> idsByTag = new LinkedHashMap<>();
        for (SheetRow row : sheets.order(herd, shown.asOf(), EntryChoice.USUAL)) {
            idsByTag.putIfAbsent(row.identifier().id(), row.animalId());
        }
        List<String> lines = form.text("tags")
                .orElse("")
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .distinct()
                .toList();
        List<String> unknown =
                lines.stream().filter(line -> !idsByTag.containsKey(line)).toList();
        if (!unknown.isEmpty()) {
            return order(shown, lines, unknown, PageResource.NOT_ACCEPTED);
        }
        choices.keepOwn(herd, desk.keyId(), lines.stream().map(idsByTag::get).toList());
        return PageResource.to(shown.page("/weigh-day"));
    }

    @GET
    @Path("/total")
    @Operation(hidden = true)
    public Response getTotal(@PathParam("herd") String herdCode, @BeanParam PageQuery query) {
        Shown shown = desk.toRead(herdCode, query);
        return PageResource.html(Templates.weighDayTotal(WeighDayTotalPage.of(
                shown,
                totals.of(shown.herd(), shown.asOf(), desk.choice(shown.herd()).milkings()))));
    }
}
