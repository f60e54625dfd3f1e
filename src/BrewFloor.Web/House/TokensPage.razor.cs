using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Store.People;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.House;

/// <summary>Which programs come in, and what each may.</summary>
public sealed partial class TokensPage(Wording wording, Tokens tokens, TimeProvider clock)
{
    private static readonly Listed<string> Scopes = Tokens.Scopes;

    private Listed<Token> _tokens = [];
    private string? _secret;
    private string? _problem;

    [SupplyParameterFromForm(FormName = "token")]
    private TokenInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        Input ??= new() { Scopes = ["read"] };
        await ReadAsync();
    }

    private async Task MakeAsync()
    {
        var name = Input!.Name?.Trim();
        _problem =
            name is null or "" or { Length: > Person.LongestName } ? "name-missing"
            : Input.Scopes is not { Count: > 0 } scopes || scopes.Except(Scopes, StringComparer.Ordinal).Any()
                ? "tokens-no-scope"
            : null;
        if (_problem is not null)
        {
            Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            return;
        }

        var (by, now) = (Policies.IdOf(Http.User), clock.GetUtcNow());
        if (await tokens.AddAsync(name!, Input.Scopes!, by, now, Http.RequestAborted) is not { } made)
        {
            _problem = "tokens-taken";
            Http.Response.StatusCode = StatusCodes.Status409Conflict;
            return;
        }

        await Http.NoteAsync(SecurityKind.TokenMade, detail: $"{name}: {string.Join(", ", Input.Scopes!)}");
        _secret = made.Secret;
        Http.Response.Headers.CacheControl = "no-store";
        Input = new() { Scopes = Input.Scopes };
        await ReadAsync();
    }

    private async Task EndAsync(Guid id)
    {
        await tokens.RevokeAsync(id, clock.GetUtcNow(), Http.RequestAborted);
        await Http.NoteAsync(SecurityKind.TokenEnded, detail: _tokens.FirstOrDefault(token => token.Id == id)?.Name);
        await ReadAsync();
    }

    private async Task ReadAsync() => _tokens = await tokens.AllAsync(Http.RequestAborted);

    private string Line(Token token) =>
        token.RevokedAt is { } over
            ? wording["tokens-over", new Number("at", over)]
            : wording[
                "tokens-line",
                new("at", token.CreatedAt),
                new("scopes", string.Join(", ", token.Scopes.Select(scope => wording["tokens-scope-" + scope])))
            ];

    public sealed class TokenInput
    {
        public string? Name { get; set; }

        /// <summary>Null: none is ticked.</summary>
        public IList<string>? Scopes { get; set; }
    }
}
