using System.Buffers.Text;
using System.Security.Cryptography;
using BrewFloor.Store.People;
using BrewFloor.Web.Hosting;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Account;

/// <summary>What a browser sends around its passkey dialog, and the ends of passkeys and sessions. The pages show the rest.</summary>
internal static class PasskeyEndpoints
{
    public static void MapPasskeys(this IEndpointRouteBuilder app)
    {
        var routes = app.MapGroup("").TakesOurForms();
        routes.MapPost("/passkeys/options", AskToUseAsync).AllowAnonymous();
        routes.MapPost("/passkeys/yes/options", AskForYesAsync).RequireAuthorization(Policies.Helper);
        routes.MapPost("/passkeys/sign-in", SignInAsync).AllowAnonymous();
        routes.MapPost("/me/passkeys/options", AskToMakeAsync).RequireAuthorization(Policies.Viewer);
        routes.MapPost("/me/passkeys", AddAsync).RequireAuthorization(Policies.Viewer);
        routes.MapPost("/me/passkeys/remove", RemoveAsync).RequireAuthorization(Policies.Viewer);
        routes.MapPost("/me/sessions/end", EndAsync).RequireAuthorization(Policies.Viewer);
        routes.MapPost("/invite/{secret}/options", AskInvitedAsync).AllowAnonymous();
        routes.MapPost("/invite/{secret}/passkey", ComeInAsync).AllowAnonymous();
    }

    private static async Task<IResult> AskToUseAsync(HttpContext http, PasskeyDoor door) =>
        Results.Json(await door.AskToUseAsync(http, PasskeyFor.SigningIn));

    private static async Task<IResult> AskForYesAsync(HttpContext http, PasskeyDoor door)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var yes = PasskeyFor.SayingYes(Policies.IdOf(http.User), form["id"]);
        return Results.Json(await door.AskToUseAsync(http, yes));
    }

    private static async Task<IResult> SignInAsync(HttpContext http, PasskeyDoor door, SignIns signIns)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var back = LocalPaths.Safe(form["returnUrl"], http);
        if (await door.UsedAsync(http, form["credential"], form["state"], PasskeyFor.SigningIn) is not { } person)
        {
            await http.NoteAsync(SecurityKind.SignInFailed, detail: "passkey");
            return Results.LocalRedirect($"~/sign-in?passkey=failed&returnUrl={Uri.EscapeDataString(back)}");
        }

        await signIns.SignInAsync(http, person);
        return Results.LocalRedirect(back);
    }

    private static async Task<IResult> AskToMakeAsync(HttpContext http, PasskeyDoor door) =>
        Results.Json(await door.AskToMakeAsync(http, Policies.IdOf(http.User), http.User.Identity?.Name ?? ""));

    private static async Task<IResult> AddAsync(HttpContext http, PasskeyDoor door, Passkeys passkeys)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var made = await door.MadeAsync(http, form["credential"], form["state"]);
        if (made is null || made.Person != Policies.IdOf(http.User))
        {
            return Results.LocalRedirect("~/me/access?passkey=failed");
        }

        var passkey = PasskeyPeople.ToPasskey(made.Info, NameOf(http, form["name"]));
        await passkeys.AddAsync(made.Person, passkey, http.RequestAborted);
        await http.NoteAsync(SecurityKind.PasskeyAdded, detail: passkey.Name);
        return Results.LocalRedirect("~/me/access");
    }

    private static async Task<IResult> RemoveAsync(HttpContext http, Passkeys passkeys)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        if (Base64Url.IsValid(form["id"].ToString()))
        {
            var id = Base64Url.DecodeFromChars(form["id"].ToString());
            await passkeys.RemoveAsync(Policies.IdOf(http.User), id, http.RequestAborted);
            await http.NoteAsync(SecurityKind.PasskeyRemoved);
        }

        return Results.LocalRedirect("~/me/access");
    }

    private static async Task<IResult> EndAsync(HttpContext http, Sessions sessions, TimeProvider clock)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        Guid? only = Guid.TryParse(form["id"], out var id) ? id : null;
        var but = only is null ? SignIns.SessionOf(http.User) : null;
        await sessions.EndAsync(Policies.IdOf(http.User), only, but, clock.GetUtcNow(), http.RequestAborted);
        await http.NoteAsync(SecurityKind.SessionsEnded, Policies.IdOf(http.User));
        return Results.LocalRedirect("~/me/access");
    }

    private static async Task<IResult> AskInvitedAsync(
        HttpContext http,
        string secret,
        PasskeyDoor door,
        Invites invites,
        TimeProvider clock
    )
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var name = form["name"].ToString().Trim();
        return
            await invites.FindAsync(secret, clock.GetUtcNow(), http.RequestAborted) is InviteFound.Good
            && name is not ""
            ? Results.Json(await door.AskToMakeAsync(http, Guid.CreateVersion7(), name))
            : Results.BadRequest();
    }

    private static async Task<IResult> ComeInAsync(HttpContext http, string secret, PasskeyDoor door, Arrivals arrivals)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var made = await door.MadeAsync(http, form["credential"], form["state"]);
        if (made is null)
        {
            return Back("failed");
        }

        var used = await arrivals.WithPasskeyAsync(
            http,
            secret,
            made.Person,
            made.Name,
            PasskeyPeople.ToPasskey(made.Info, NameOf(http, ""))
        );
        return used is InviteUse.Welcome ? Results.LocalRedirect("~/")
            : used is InviteUse.NameTaken ? Back("taken")
            : Back("failed");

        IResult Back(string why) => Results.LocalRedirect($"~/invite/{Uri.EscapeDataString(secret)}?passkey={why}");
    }

    // What it is on: said, or as the browser tells.
    private static string NameOf(HttpContext http, string? said)
    {
        var name = said?.Trim() is { Length: > 0 } typed
            ? typed
            : Devices.Shown(
                Devices.Of(http.Request.Headers.UserAgent.ToString()),
                http.RequestServices.GetRequiredService<Wording>()
            );
        return name.Length <= Person.LongestName ? name : name[..Person.LongestName];
    }
}

/// <summary>People who come in with an invite, and are signed in at once.</summary>
internal sealed class Arrivals(Invites invites, Passwords passwords, SignIns signIns, TimeProvider clock)
{
    public Task<InviteUse> WithPasswordAsync(HttpContext http, string secret, string name, string password) =>
        ComeInAsync(http, secret, new(Guid.CreateVersion7(), name, passwords.Hash(password)));

    public Task<InviteUse> WithPasskeyAsync(HttpContext http, string secret, Guid id, string name, Passkey passkey)
    {
        var unknown = passwords.Hash(RandomNumberGenerator.GetHexString(Passwords.Advised * 4)); // nobody will ever type it
        return ComeInAsync(http, secret, new(id, name, unknown) { Passkey = passkey });
    }

    private async Task<InviteUse> ComeInAsync(HttpContext http, string secret, NewPerson person)
    {
        var used = await invites.UseAsync(secret, person, clock.GetUtcNow(), http.RequestAborted);
        if (used is InviteUse.Welcome(var arrived))
        {
            await http.NoteByAsync(arrived.Id, SecurityKind.InviteUsed, RoleNames.Of(arrived.Role));
            await signIns.SignInAsync(http, arrived);
        }

        return used;
    }
}
