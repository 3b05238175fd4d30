package org.pailbook.records.page;

import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.Sessions;
import org.pailbook.records.access.WithoutKey;
import org.pailbook.records.problem.ProblemPage;

/** Signing in with a key in a browser, and the style of all pages: what is there before anybody is known. */
@Path("/pages")
@WithoutKey
public class SignInResource {
    private static final String STYLE = "org/pailbook/records/page/pailbook.css";
    private static final String SCRIPT = "org/pailbook/records/page/pailbook.js";
    private static final String COOKIE_PATH = "/pages";

    private final Sessions sessions;
    private final RoutingContext routing;

    @Inject
    SignInResource(Sessions sessions, RoutingContext routing) {
        this.sessions = sessions;
        this.routing = routing;
    }

    @GET
    @Path("/sign-in")
    @Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
    @Operation(hidden = true)
    public Response getSignIn() {
        return PageResource.html(Templates.signIn(false));
    }

    @POST
    @Path("/sign-in")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
    @Operation(hidden = true)
    public Response signIn(@FormParam("key") @DefaultValue("") String key, @Context HttpHeaders headers) {
        Optional<String> session =
                sessions.begin(key, routing.request().remoteAddress().hostAddress());
        if (session.isEmpty()) {
            return PageResource.html(Templates.signIn(true), Response.Status.FORBIDDEN.getStatusCode());
        }
        return Response.seeOther(URI.create("/pages"))
                .cookie(cookie(session.get(), (int) Sessions.LENGTH.toSeconds(), headers))
                .build();
    }

    @POST
    @Path("/sign-out")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Produces({"text/html; charset=utf-8", MediaType.WILDCARD})
    @Operation(hidden = true)
    public Response signOut(@Context HttpHeaders headers) {
        return Response.seeOther(URI.create("/pages/sign-in"))
                .cookie(cookie("", 0, headers))
                .build();
    }

    /** Sent back by the browser to the pages only, never to other sites' requests, and not to be read by a script. */
    private static NewCookie cookie(String value, int seconds, HttpHeaders headers) {
        return new NewCookie.Builder(Sessions.COOKIE)
                .value(value)
                .path(COOKIE_PATH)
                .maxAge(seconds)
                .httpOnly(true)
                .secure("https".equals(headers.getHeaderString("X-Forwarded-Proto")))
                .sameSite(NewCookie.SameSite.STRICT)
                .build();
    }

    @GET
    @Path("/pailbook.css")
    @Produces("text/css")
    @Operation(hidden = true)
    public Response getStyle() {
        return file(STYLE, "text/css; charset=utf-8");
    }

    @GET
    @Path("/pailbook.js")
    @Produces("text/javascript")
    @Operation(hidden = true)
    public Response getScript() {
        return file(SCRIPT, "text/javascript; charset=utf-8");
    }

    private static Response file(String name, String mediaType) {
        try (InputStream file = Thread.currentThread().getContextClassLoader().getResourceAsStream(name)) {
            return Response.ok(file.readAllBytes(), mediaType)
                    .header(HttpHeaders.CACHE_CONTROL, "public, max-age=3600")
                    .header("Content-Security-Policy", ProblemPage.CONTENT_SECURITY_POLICY)
                    .build();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
