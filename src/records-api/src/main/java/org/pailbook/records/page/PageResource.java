package org.pailbook.records.page;

import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.Scope;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.computed.HerdLearning;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemPage;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;
import org.pailbook.records.store.TestDayRow;

/** The pages. They answer web pages whatever the caller accepts, and only read. */
@Path("/pages")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class PageResource {
    static final int GONE = 410;

    /** Status of a form sent back with what is wrong in it. */
    static final int NOT_ACCEPTED = 422;

    private static final int LATEST = 0;
    private static final int MOST_HERDS = 1_000;
    /** Twice the usual test interval: a herd untested for so long is first shown as it was on its last test day. Ours. */
    private static final int LONG_AGO_DAYS = 56;

    private final PageDesk desk;
    private final Caller caller;
    private final Herds herds;
    private final Events events;
    private final HerdLearning learning;
    private final HerdToday today;
    private final CowDossier dossier;
    private final Clock clock;

    @Inject
    PageResource(
            PageDesk desk,
            Caller caller,
            Herds herds,
            Events events,
            HerdLearning learning,
            HerdToday today,
            CowDossier dossier,
            Clock clock) {
        this.desk = desk;
        this.caller = caller;
        this.herds = herds;
        this.events = events;
        this.learning = learning;
        this.today = today;
        this.dossier = dossier;
        this.clock = clock;
    }

    @GET
    @Operation(hidden = true)
    public Response getHerds() {
        caller.requireScope(Scope.READ);
        List<HerdRow> all = caller.reachesEveryHerd()
                ? herds.pageAll("", MOST_HERDS)
                : herds.pageOf(caller.herdCodes(), "", MOST_HERDS);
        List<ListPages.HerdLine> lines = all.stream().map(this::line).toList();
        if (lines.isEmpty() && caller.reachesEveryHerd() && desk.mayWrite()) {
            return html(Templates.herds(
                    ListPages.HerdsPage.withForm(caller.label(), StartPages.herd(Map.of(), List.of()))));
        }
        return lines.size() == 1
                ? to(lines.get(0).link())
                : html(Templates.herds(ListPages.HerdsPage.of(lines, caller.label())));
    }

    private ListPages.HerdLine line(HerdRow herd) {
        LocalDate last = events.lastDay(TestDayRow.class, herd.id).orElse(null);
        LocalDate today = LocalDate.ofInstant(clock.instant(), herd.zone());
        return ListPages.HerdLine.of(
                herd, last, last != null && last.plusDays(LONG_AGO_DAYS).isBefore(today));
    }

    @GET
    @Path("/herds/{herd}")
    @Operation(hidden = true)
    public Response getHerd(@PathParam("herd") String herdCode, @BeanParam PageQuery query) {
        Shown shown = desk.shown(herdCode, query);
        List<KnownCow> cows = desk.all(shown);
        return html(Templates.herd(HerdPage.of(shown, cows, today.toDo(shown, cows), today.milk(shown))));
    }

    @GET
    @Path("/herds/{herd}/animals")
    @Operation(hidden = true)
    public Response getAnimals(
            @PathParam("herd") String herdCode, @BeanParam PageQuery query, @QueryParam("page") String page) {
        Shown shown = desk.shown(herdCode, query);
        return html(
                Templates.animals(ListPages.AnimalsPage.of(shown, desk.all(shown), PageQuery.number("page", page, 1))));
    }

    @GET
    @Path("/herds/{herd}/animals/{animal}")
    @Operation(hidden = true)
    public Response getCow(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            @BeanParam PageQuery query,
            @QueryParam("parity") String lactation) {
        Shown shown = desk.shown(herdCode, query);
        KnownCow cow = desk.one(shown, animal);
        int parity = PageQuery.number("parity", lactation, LATEST);
        if (parity != LATEST && cow.onDay().lactations().ofParity(parity).isEmpty()) {
            throw Problem.notFound();
        }
        return html(Templates.cow(CowPage.of(cow, parity, shown, dossier.of(cow, shown))));
    }

    @GET
    @Path("/herds/{herd}/projections")
    @Operation(hidden = true)
    public Response getProjections(
            @PathParam("herd") String herdCode, @BeanParam PageQuery query, @QueryParam("page") String page) {
        Shown shown = desk.shown(herdCode, query);
        return html(Templates.projections(
                ListPages.ProjectionsPage.of(shown, desk.all(shown), PageQuery.number("page", page, 1))));
    }

    @GET
    @Path("/herds/{herd}/accuracy")
    @Operation(hidden = true)
    public Response getAccuracy(@PathParam("herd") String herdCode, @BeanParam PageQuery query) {
        Shown shown = desk.shown(herdCode, query);
        return html(Templates.accuracy(ListPages.AccuracyPage.of(shown, learning.of(shown.herd(), shown.asOf()))));
    }

    @GET
    @Path("/herds/{herd}/findings")
    @Operation(hidden = true)
    public Response getFindings(
            @PathParam("herd") String herdCode, @BeanParam PageQuery query, @QueryParam("page") String page) {
        Shown shown = desk.shown(herdCode, query);
        return html(Templates.findings(
                ListPages.FindingsPage.of(shown, desk.all(shown), PageQuery.number("page", page, 1))));
    }

    @GET
    @Path("/herds/{herd}/how-to")
    @Operation(hidden = true)
    public Response getHowTo(@PathParam("herd") String herdCode, @BeanParam PageQuery query, @Context UriInfo address) {
        String base = address.getBaseUri().toString().replaceAll("/$", "");
        return html(Templates.howTo(HowToPage.of(desk.shown(herdCode, query), base)));
    }

    static Response html(TemplateInstance page) {
        return html(page, 200);
    }

    static Response html(TemplateInstance page, int status) {
        return html(page, status, ProblemPage.CONTENT_SECURITY_POLICY);
    }

    /** The same for a page with our script. */
    static Response htmlWithScript(TemplateInstance page, int status) {
        return html(page, status, ProblemPage.CONTENT_SECURITY_POLICY_WITH_SCRIPT);
    }

    private static Response html(TemplateInstance page, int status, String policy) {
        return Response.status(status)
                .entity(page.render())
                .type(ProblemPage.MEDIA_TYPE)
                .header("Content-Security-Policy", policy)
                .header(HttpHeaders.VARY, HttpHeaders.ACCEPT_LANGUAGE)
                .build();
    }

    /** After a form was taken: its sender is led on, so that looking again sends nothing again. */
    static Response to(String address) {
        return Response.seeOther(URI.create(address)).build();
    }
}
