namespace BrewFloor.Web.Api;

/// <summary>A parameter in the address, as the description of the interface names it.</summary>
internal sealed record Taken(string Name, string Description);

/// <summary>The endpoint takes entries as its body.</summary>
internal sealed record TakesEntries;

/// <summary>The endpoint takes the inputs of a calculator as its body.</summary>
internal sealed record TakesInputs;

/// <summary>What every endpoint of the interface says about itself.</summary>
internal static class ApiEndpoints
{
    /// <summary>Only reads: a token with the scope read, or a person who is signed in.</summary>
    public static RouteHandlerBuilder Reads(this RouteHandlerBuilder endpoint, string tag, string summary) =>
        endpoint.RequireAuthorization(ApiPolicies.Read).WithTags(tag).WithSummary(summary);

    /// <summary>Writes the log: a token with the scope log, and no cookie.</summary>
    public static RouteHandlerBuilder Logs(this RouteHandlerBuilder endpoint, string summary, string description) =>
        endpoint
            .RequireAuthorization(ApiPolicies.Log)
            .WithTags("Log")
            .WithSummary(summary)
            .WithDescription(description)
            .WithMetadata(new TakesEntries());

    public static RouteHandlerBuilder Takes(this RouteHandlerBuilder endpoint, string name, string description) =>
        endpoint.WithMetadata(new Taken(name, description));

    public static RouteHandlerBuilder IsPaged(this RouteHandlerBuilder endpoint) =>
        endpoint
            .Takes("limit", $"How many at most, 1 to {ApiPages.Most}.")
            .Takes("after", "The \"next\" of the page before.");
}
