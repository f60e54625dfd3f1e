using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Log;

/// <summary>Whoever goes back finds the very form that was sent, with the ids in it: sending it again is no second entry.</summary>
/// <remarks>
/// A page with a token against forged forms is kept by no browser unless told otherwise: it would ask for a new form, with
/// new ids, and put into it what was typed. Nobody but this browser keeps it, and only a step back shows it unasked.
/// </remarks>
internal static class SentForms
{
    private const string Sent = "sent";

    public static void AreKept(HttpContext http) =>
        http.Response.OnStarting(
            static response =>
            {
                var headers = ((HttpResponse)response).Headers;
                headers.CacheControl = "private, no-cache";
                headers.Remove("Pragma");
                return Task.CompletedTask;
            },
            http.Response
        );

    /// <summary>Where the form is sent: another address than its own, as sending to its own would make a browser forget it.</summary>
    public static string AddressOf(HttpContext http) =>
        LocalPaths.Page(http)
        + (http.Request.Query.ContainsKey(Sent) ? http.Request.QueryString : http.Request.QueryString.Add(Sent, "1"));
}
