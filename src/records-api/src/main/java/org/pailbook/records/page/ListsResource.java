package org.pailbook.records.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.lactation.breeding.BreedingList;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.access.WithSession;
import org.pailbook.records.computed.BreedingLists;
import org.pailbook.records.computed.DecisionLists;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.HerdTank;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;

/** The lists a farm decides with: milk not for the tank, breeding, udder health, culling. */
@Path("/pages/herds/{herd}/lists")
@WithSession
@Blocking
@Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
public class ListsResource {
    private final PageDesk desk;
    private final DecisionLists lists;
    private final BreedingLists bred;
    private final CowRecords records;
    private final HerdSettings settings;
    private final HerdTank tank;

    @Inject
    ListsResource(
            PageDesk desk,
            DecisionLists lists,
            BreedingLists bred,
            CowRecords records,
            HerdSettings settings,
            HerdTank tank) {
        this.desk = desk;
        this.lists = lists;
        this.bred = bred;
        this.records = records;
        this.settings = settings;
        this.tank = tank;
    }

    @GET
    @Operation(hidden = true)
    public Response getLists(@PathParam("herd") String herd, @BeanParam PageQuery query) {
        Shown shown = desk.shown(herd, query);
        List<CowRecord> animals = records.ofHerd(shown.herd(), shown.asOf());
        return PageResource.html(Templates.lists(DecisionPages.ListsPage.of(
                shown,
                lists.withheld(shown.herd(), animals, shown.asOf()),
                bred.counts(shown.herd(), animals, shown.asOf()))));
    }

    @GET
    @Path("/milk-withheld")
    @Operation(hidden = true)
    public Response getMilkWithheld(@PathParam("herd") String herd, @BeanParam PageQuery query) {
        Shown shown = desk.shown(herd, query);
        return PageResource.html(Templates.milkWithheld(DecisionPages.WithheldPage.of(
                shown, lists.withheld(shown.herd(), WithheldMilk.endOf(shown.asOf()), OptionalInt.empty()))));
    }

    @GET
    @Path("/culling")
    @Operation(hidden = true)
    public Response getCulling(
            @PathParam("herd") String herd, @BeanParam PageQuery query, @QueryParam("page") String page) {
        Shown shown = desk.shown(herd, query);
        return PageResource.html(Templates.culling(DecisionPages.CullingPage.of(
                shown, lists.ranking(shown.herd(), shown.asOf()), PageQuery.number("page", page, 1))));
    }

    @GET
    @Path("/udder-health")
    @Operation(hidden = true)
    public Response getUdderHealth(
            @PathParam("herd") String herd, @BeanParam PageQuery query, @QueryParam("page") String page) {
        Shown shown = desk.shown(herd, query);
        SettingsInForce own = settings.on(shown.herd(), shown.asOf());
        return PageResource.html(Templates.udderHealth(UdderPage.of(
                shown,
                records.ofHerd(shown.herd(), shown.asOf()).stream()
                        .filter(record -> record.isBornBy(shown.asOf()))
                        .toList(),
                own.highFrom(OptionalInt.empty()),
                own.tankLimit(Optional.empty()).map(limit -> tank.standing(shown.herd(), limit, shown.asOf())),
                PageQuery.number("page", page, 1))));
    }

    @GET
    @Path("/{list}")
    @Operation(hidden = true)
    public Response getBreedingList(
            @PathParam("herd") String herd,
            @PathParam("list") String name,
            @BeanParam PageQuery query,
            @QueryParam("page") String page) {
        Shown shown = desk.shown(herd, query);
        BreedingList list = Arrays.stream(BreedingList.values())
                .filter(one -> DecisionPages.path(one).equals(name))
                .findFirst()
                .orElseThrow(Problem::notFound);
        return PageResource.html(Templates.breeding(DecisionPages.BreedingPage.of(
                shown, list, bred.on(shown.herd(), shown.asOf()).lines(), PageQuery.number("page", page, 1))));
    }
}
