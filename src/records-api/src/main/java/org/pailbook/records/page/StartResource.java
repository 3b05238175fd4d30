package org.pailbook.records.page;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.qute.TemplateInstance;
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
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.Scope;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.intake.NewHerds;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;

/** From an empty service to the first cow: make a herd, put in a cow, see what is expected of her. */
@Path("/pages")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class StartResource {
    private static final Map<String, String> OF_ANIMAL =
            Map.of("/identifiers/0/id", "/tag", "/name", "/cowName", "/breed", "/breed");
    private static final Map<String, String> OF_CALVING = Map.of("/date", "/calvedOn", "/parity", "/parity");

    private final PageDesk desk;
    private final PageIntake intake;
    private final NewHerds newHerds;
    private final Herds herds;
    private final Caller caller;

    @Inject
    StartResource(PageDesk desk, PageIntake intake, NewHerds newHerds, Herds herds, Caller caller) {
        this.desk = desk;
        this.intake = intake;
        this.newHerds = newHerds;
        this.herds = herds;
        this.caller = caller;
    }

    @POST
    @Path("/herds")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response makeHerd(InputStream body) {
        caller.requireScope(Scope.WRITE);
        caller.requireEveryHerd();
        Map<String, String> typed = FormFields.read(body).typed();
        try {
            HerdRow herd = newHerds.make(herd(typed), caller.keyId());
            String unit = StartPages.text(typed, "milkUnit");
            if (!unit.isEmpty()) {
                ObjectNode own = JsonNodeFactory.instance.objectNode();
                intake.take(
                        "settings",
                        herd,
                        own.put("validFrom", desk.today(herd).toString()).put("milkUnit", unit));
            }
            return PageResource.to("/pages/herds/" + herd.code + "/new-cow");
        } catch (Problem refused) {
            if (refused.faults().isEmpty()) {
                throw refused;
            }
            return PageResource.html(
                    Templates.herds(
                            ListPages.HerdsPage.withForm(caller.label(), StartPages.herd(typed, refused.faults()))),
                    PageResource.NOT_ACCEPTED);
        }
    }

    private ObjectNode herd(Map<String, String> typed) {
        String name = StartPages.text(typed, "name");
        String wanted = StartPages.code(name);
        String code = wanted;
        for (int i = 2; herds.byCode(code).isPresent(); i++) {
            code = wanted + "-" + i;
        }
        return JsonNodeFactory.instance
                .objectNode()
                .put("code", code)
                .put("name", name)
                .put("timeZone", StartPages.text(typed, "timeZone"));
    }

    @GET
    @Path("/herds/{herd}/new-cow")
    @Operation(hidden = true)
    public Response getNewCow(@PathParam("herd") String herd, @BeanParam PageQuery query) {
        Shown shown = desk.toWrite(herd, query);
        return PageResource.html(page(shown, Map.of(), List.of()));
    }

    @POST
    @Path("/herds/{herd}/new-cow")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response takeNewCow(@PathParam("herd") String herd, InputStream body) {
        Shown shown = desk.toWrite(herd, new PageQuery());
        Map<String, String> typed = FormFields.read(body).typed();
        List<Fault> faults = take(shown, typed);
        return faults.isEmpty()
                ? PageResource.to(shown.cow(new AnimalIdentifier(StartPages.SCHEME, StartPages.text(typed, "tag"))))
                : PageResource.html(page(shown, typed, faults), PageResource.NOT_ACCEPTED);
    }

    /** One after the other: a test day is of a cow that is there. What was stored before a fault stays, and sending it again changes nothing. */
    private List<Fault> take(Shown shown, Map<String, String> typed) {
        List<Fault> faults = placed(intake.take("animals", shown.herd(), StartPages.animal(typed)), OF_ANIMAL);
        if (faults.isEmpty()) {
            faults = placed(intake.take("calvings", shown.herd(), StartPages.calving(typed)), OF_CALVING);
        }
        if (faults.isEmpty() && StartPages.hasTest(typed)) {
            Map<String, String> ofTest =
                    Map.of("/date", "/testedOn", "/milkKg", shown.isPounds() ? "/milkLb" : "/milkKg");
            faults = placed(intake.take("test-days", shown.herd(), StartPages.testDay(typed)), ofTest);
        }
        return faults;
    }

    /** Faults beside the fields of the form. */
    private static List<Fault> placed(List<Fault> faults, Map<String, String> fields) {
        return faults.stream()
                .map(fault -> Fault.inBody(
                        fields.getOrDefault(String.valueOf(fault.pointer()), String.valueOf(fault.pointer())),
                        fault.code(),
                        fault.message()))
                .toList();
    }

    private TemplateInstance page(Shown shown, Map<String, String> typed, List<Fault> faults) {
        return Templates.newCow(StartPages.NewCowPage.of(
                shown, desk.all(shown).isEmpty(), StartPages.cow(typed, faults, shown.unit())));
    }
}
