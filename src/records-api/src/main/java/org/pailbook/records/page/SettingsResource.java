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
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.store.PriceRow;
import org.pailbook.records.store.SettingRow;

/** Settings and prices of a herd: shown to who may read, changed by who may write. */
@Path("/pages/herds/{herd}/settings")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class SettingsResource {
    private static final String VALID_FROM = "validFrom";

    private final PageDesk desk;
    private final PageIntake intake;
    private final HerdSettings settings;

    @Inject
    SettingsResource(PageDesk desk, PageIntake intake, HerdSettings settings) {
        this.desk = desk;
        this.intake = intake;
        this.settings = settings;
    }

    @GET
    @Operation(hidden = true)
    public Response getSettings(@PathParam("herd") String herd, @BeanParam PageQuery query) {
        Shown shown = desk.shown(herd, query);
        return page(shown, ownSettings(shown), ownPrices(shown), 200);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response setSettings(@PathParam("herd") String herd, InputStream body) {
        Shown shown = desk.toWrite(herd, new PageQuery());
        Map<String, String> typed = FormFields.read(body).typed();
        List<Fault> faults = take(shown, "settings", typed, SettingsPage.settings(typed, List.of()));
        return faults.isEmpty() ? done(shown) : refused(shown, SettingsPage.settings(typed, faults), ownPrices(shown));
    }

    @POST
    @Path("/prices")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response setPrices(@PathParam("herd") String herd, InputStream body) {
        Shown shown = desk.toWrite(herd, new PageQuery());
        Map<String, String> typed = FormFields.read(body).typed();
        List<Fault> faults = take(shown, "prices", typed, SettingsPage.prices(typed, List.of()));
        return faults.isEmpty() ? done(shown) : refused(shown, ownSettings(shown), SettingsPage.prices(typed, faults));
    }

    private List<Fault> take(Shown shown, String kind, Map<String, String> typed, PageForm form) {
        return intake.take(kind, shown.herd(), PageForm.content(typed, form.fields()));
    }

    private PageForm ownSettings(Shown shown) {
        return SettingsPage.settings(
                fromToday(shown, intake.inForce("settings", SettingRow.class, shown.herd(), shown.asOf())), List.of());
    }

    private PageForm ownPrices(Shown shown) {
        return SettingsPage.prices(
                fromToday(shown, intake.inForce("prices", PriceRow.class, shown.herd(), shown.asOf())), List.of());
    }

    /** What is set anew holds from today unless another day is chosen: what held before stays as it was. */
    private static Map<String, String> fromToday(Shown shown, Map<String, String> values) {
        values.put(VALID_FROM, shown.asOf().toString());
        return values;
    }

    private static Response done(Shown shown) {
        return PageResource.to(shown.page("/settings"));
    }

    private Response refused(Shown shown, PageForm own, PageForm prices) {
        return page(shown, own, prices, PageResource.NOT_ACCEPTED);
    }

    private Response page(Shown shown, PageForm own, PageForm prices, int status) {
        return PageResource.html(
                Templates.settings(SettingsPage.of(shown, settings.on(shown.herd(), shown.asOf()), own, prices)),
                status);
    }
}
