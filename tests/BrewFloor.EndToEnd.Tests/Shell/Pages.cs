using BrewFloor.Brewing.Calculators;
using BrewFloor.EndToEnd.Tests.House;
using BrewFloor.Web.Log;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;

namespace BrewFloor.EndToEnd.Tests.Shell;

/// <summary>Every page there is: its route, and where it is found on a full floor, in each of its faces.</summary>
internal static class Pages
{
    // A new page is added here by hand; until then a test is red.
    private static readonly Dictionary<string, Func<FullFloor, IEnumerable<string>>> ByRoute = new(
        StringComparer.Ordinal
    )
    {
        ["/"] = _ => ["/", "/?show=off"],
        ["/batches"] = _ => ["/batches"],
        ["/batches/{Number:int}"] = floor => floor.Batches.Select(number => $"/batches/{number}"),
        ["/batches/{Number:int}/edit"] = floor => [$"/batches/{floor.Batches[0]}/edit"],
        ["/batches/{BatchNumber:int}/log/{Kind}"] = floor => [$"/batches/{floor.Batches[0]}/log/noted"],
        ["/calculators"] = _ => ["/calculators"],
        ["/calculators/{Name}"] = _ =>
            [
                .. AllCalculators.All.DistinctBy(one => one.Subject).Select(one => $"/calculators/{one.Name}"), // all are one page
                "/calculators/spunding?carbonation=9&temperature=x",
            ],
        ["/doctor"] = _ => ["/doctor"],
        ["/entries/{Id:guid}/answer"] = floor => [$"/entries/{floor.DoneAnyway}/answer"],
        ["/entries/{Id:guid}/correct"] = floor => [$"/entries/{floor.Reading}/correct"],
        ["/entries/{Id:guid}/strike"] = floor => [$"/entries/{floor.Reading}/strike"],
        ["/error"] = _ => ["/error"],
        ["/import"] = _ => ["/import"],
        ["/import/{Id:guid}"] = floor => [$"/import/{floor.Spreadsheet}", $"/import/{floor.Imported}"],
        ["/invite/{Secret}"] = floor => [$"/invite/{floor.Invite}", "/invite/never-made"],
        ["/items"] = _ => ["/items"],
        ["/items/{Number:int}"] = _ => ["/items/1"],
        ["/items/{Number:int}/edit"] = _ => ["/items/1/edit"],
        ["/items/log/{Kind}"] = _ => ["/items/log/item-counted", "/items/log/item-received"],
        ["/items/{ItemNumber:int}/log/{Kind}"] = _ => ["/items/1/log/item-used", "/items/2/log/item-discarded"],
        ["/jobs"] = _ => ["/jobs"],
        ["/jobs/{Id:guid}/put-off"] = floor => [$"/jobs/{floor.Jobs[0]}/put-off"],
        ["/labels"] = _ => ["/labels", "/labels?tank=F1"],
        ["/labels/print"] = floor =>
            [$"/labels/print?paper=A4&tank={string.Join("&tank=", floor.Codes)}", "/labels/print?paper=Each"],
        ["/me"] = _ => ["/me"],
        ["/me/access"] = _ => ["/me/access"],
        ["/me/password"] = _ => ["/me/password"],
        ["/more"] = _ => ["/more"],
        ["/new-tank"] = _ => ["/new-tank"],
        ["/not-found"] = _ => ["/not-found"],
        ["/not-yours"] = _ => ["/not-yours"],
        ["/people"] = _ => ["/people"],
        ["/people/{Id:guid}"] = floor => [$"/people/{floor.App.Author(FloorApp.Helper).Id}"],
        ["/settings/address"] = _ => ["/settings/address"],
        ["/settings/configuration"] = _ => ["/settings/configuration"],
        ["/settings/rules"] = _ => ["/settings/rules"],
        ["/settings/security"] = _ => ["/settings/security"],
        ["/settings/site"] = _ => ["/settings/site"],
        ["/settings/tokens"] = _ => ["/settings/tokens"],
        ["/setup"] = _ => ["/setup"],
        ["/setup/restore"] = _ => ["/setup/restore"],
        ["/sign-in"] = _ => ["/sign-in"],
        ["/take-over"] = _ => ["/take-over"],
        ["/tanks/{Code}"] = floor =>
            [.. floor.Codes.Select(code => $"/tanks/{code}"), $"/tanks/F1?logged={floor.Reading}"],
        ["/tanks/{Code}/edit"] = _ => ["/tanks/P1/edit"],
        ["/tanks/{Code}/history"] = _ => ["/tanks/P1/history"],
        ["/tanks/{Code}/ports"] = _ => ["/tanks/P1/ports", "/tanks/P1/ports?typical=true"],
        ["/tanks/{Code}/log/{Kind}"] = _ =>
            [
                "/tanks/B1/log/filled",
                "/tanks/F1/log/gravity",
                "/tanks/P1/log/racked",
                "/tanks/P1/log/packaged",
                "/tanks/P1/log/pressure-set",
                "/tanks/F1/log/pitched",
                "/tanks/C1/log/washed",
            ],
        ["/yeast"] = _ => ["/yeast"],
        ["/yeast/{Number:int}"] = floor => [$"/yeast/{floor.Cultures[0]}"],
        ["/yeast/{Number:int}/edit"] = floor => [$"/yeast/{floor.Cultures[0]}/edit"],
        ["/yeast/log/{Kind}"] = _ => ["/yeast/log/culture-received"],
        ["/yeast/{CultureNumber:int}/log/{Kind}"] = floor => [$"/yeast/{floor.Cultures[0]}/log/counted"],
    };

    // Read by programs, or leading elsewhere at once.
    private static readonly string[] NotPages =
    [
        "/_framework/opaque-redirect",
        "/{**path:file}",
        "/api/v1/batches",
        "/api/v1/batches/{number:int}",
        "/api/v1/batches/{number:int}/forecast",
        "/api/v1/calculate",
        "/api/v1/calculate/{name}",
        "/api/v1/cultures",
        "/api/v1/cultures/{id:guid}",
        "/api/v1/items",
        "/api/v1/items/{number:int}",
        "/api/v1/jobs",
        "/api/v1/log",
        "/api/v1/tanks",
        "/api/v1/tanks/{code}",
        "/find",
        "/health/live",
        "/health/ready",
        "/import/template/{kind}",
        "/live",
        "/metrics",
        "/openapi/{documentName}.json",
    ];

    public static IReadOnlyList<string> AllOf(FullFloor floor) => [.. ByRoute.Values.SelectMany(make => make(floor))];

    /// <summary>One page of each kind, where what differs between two of a kind makes no difference.</summary>
    public static IReadOnlyList<string> OneOfEach(FullFloor floor) =>
        [.. ByRoute.Values.SelectMany(make => make(floor).Take(1))];

    /// <summary>What a phone opens on the floor: the floor, tanks, every form, jobs, the yeast shelf.</summary>
    public static IReadOnlyList<string> OnTheFloor(FullFloor floor) =>
        [
            "/",
            "/jobs",
            "/take-over",
            "/yeast",
            .. floor.Cultures.Select(number => $"/yeast/{number}"),
            .. floor.Codes.Select(code => $"/tanks/{code}"),
            $"/tanks/F1?logged={floor.Reading}",
            .. EntryForms.ByKind.Values.Select(form => Form(form, floor)),
        ];

    /// <summary>Where somebody sits down for it: everything that isn't a page of the floor.</summary>
    public static IReadOnlyList<string> AtTheDesk(FullFloor floor) => [.. AllOf(floor).Except(OnTheFloor(floor))];

    /// <summary>What is answered to a look and stands in neither list.</summary>
    public static IEnumerable<string> Forgotten(IEnumerable<Endpoint> endpoints) =>
        Looks(endpoints).Where(route => !ByRoute.ContainsKey(route) && !NotPages.Contains(route));

    /// <summary>What stands in a list, and isn't answered any more.</summary>
    public static IEnumerable<string> Gone(IEnumerable<Endpoint> endpoints) =>
        ByRoute.Keys.Concat(NotPages).Except(Looks(endpoints));

    /// <summary>What would be opened in place of a tank that happens to be called so.</summary>
    public static IEnumerable<string> InTheWayOfATank(IEnumerable<Endpoint> endpoints) =>
        Looks(endpoints).Where(route => route.Split('/') is ["", "tanks", not "{Code}", ..]);

    private static HashSet<string> Looks(IEnumerable<Endpoint> endpoints) =>
        endpoints
            .OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null)
            .Where(endpoint =>
                endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods.Contains("GET") ?? true
            )
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText!.TrimStart('/'))
            .ToHashSet(StringComparer.Ordinal);

    private static string Form(EntryForm form, FullFloor floor) =>
        form.Kind switch
        {
            "culture-received" or "culture-taken-over" => $"/yeast/log/{form.Kind}",
            _ when form.About is Domain.Log.SubjectKind.Culture => $"/yeast/{floor.Cultures[0]}/log/{form.Kind}",
            _ when form.About is Domain.Log.SubjectKind.Item => $"/items/1/log/{form.Kind}",
            "filled" or "fill-planned" => $"/tanks/B1/log/{form.Kind}",
            "batch-taken-over" or "tank-taken-over" => $"/tanks/NEW/log/{form.Kind}",
            _ => $"/tanks/P1/log/{form.Kind}",
        };
}
