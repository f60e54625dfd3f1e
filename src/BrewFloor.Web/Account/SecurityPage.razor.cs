using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>Who came in, who tried, and what was changed about who may: the newest first.</summary>
public sealed partial class SecurityPage(Wording wording, SecurityBook book, Accounts accounts, SecurityKept kept)
{
    private const int OnAPage = 100;

    private Listed<Person> _people = [];
    private SecurityPageRead _page = new([], Before: null);

    [SupplyParameterFromQuery(Name = "person")]
    private string? PersonId { get; set; }

    [SupplyParameterFromQuery]
    private long? Before { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    // An empty choice is everybody; what is no id is as if it weren't asked.
    private Guid? Person => Guid.TryParse(PersonId, out var id) ? id : null;

    private string Older =>
        $"settings/security?before={_page.Before}{(Person is { } person ? $"&person={person}" : "")}";

    protected override async Task OnInitializedAsync()
    {
        _people = await accounts.AllAsync(Http.RequestAborted);
        _page = await book.ReadAsync(Person, Before, OnAPage, Http.RequestAborted);
    }

    private string Line(SecurityNote note) =>
        string.Join(
            " · ",
            new[]
            {
                wording["security-at", new Number("at", note.At)],
                note.By,
                note.About is null || note.Event.About == note.Event.By
                    ? null
                    : wording["security-about", new Number("name", note.About)],
                note.Event.Detail,
                note.Event.Network,
            }.OfType<string>()
        );
}
