using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.People;
using BrewFloor.EndToEnd.Tests.House;
using BrewFloor.Store.People;

namespace BrewFloor.EndToEnd.Tests.Account;

/// <summary>Somebody new: the link, the way in, the first entry; and somebody who is let go.</summary>
public sealed class InviteTests(FloorApp floor) : IClassFixture<FloorApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_invited_brewer_comes_in_with_a_passkey_and_logs_their_first_entry()
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Sanitized, 31));
        var link = await LinkAsync("Imke", "Brewer");
        await using var imke = await floor.StrangerByNameAsync(Screen.Phone);
        await imke.HavePasskeysAsync();

        await imke.OpenAsync(link);
        await imke.ShotIfWantedAsync("invite");
        await imke.Page.Locator("#passkey-name").FillAsync("Imke");
        await imke.PressAsync("Come in with a passkey of this device");
        await imke.OpenAsync($"/tanks/{tank.Code}/log/noted");
        await imke.TypeAsync("Note", "My first line");
        await imke.PressAsync("Note");
        await imke.SeesAsync("My first line");
        await imke.SeesAsync("Imke");

        await imke.OpenAsync("/more");
        await imke.PressAsync("Sign out");
        await imke.PressAsync("Sign in with a passkey");
        await imke.SeesAsync(tank.Code);
        await imke.OpenAsync("/me/access");
        await imke.ShotIfWantedAsync("access");
        await imke.SeesAsync("last used");
        Assert.EndsWith("/me/access", imke.Page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_lets_one_person_in_and_says_so_to_the_next()
    {
        var link = await LinkAsync("Juna", "Helper");
        await using var juna = await floor.StrangerAsync(Screen.Phone);
        await juna.OpenAsync(link);
        await juna.TypeAsync("A password", "password1");
        await juna.PressAsync("Come in with this password");
        await juna.SeesAsync("among the first that are tried");
        await juna.TypeAsync("A password", FloorApp.Password);
        await juna.PressAsync("Come in with this password");
        await juna.SeesAsync("tank");

        await using var next = await floor.StrangerAsync(Screen.Phone);
        await next.OpenAsync(link);

        await next.SeesAsync("has let somebody in already");
        await next.OpenAsync("/invite/made-up");
        await next.SeesAsync("is not known here");
    }

    [Fact]
    public async Task Who_is_let_go_is_out_on_the_page_they_have_open()
    {
        var gone = (
            await floor
                .Services.GetRequiredService<Accounts>()
                .AddAsync("Gerd", Role.Helper, FloorApp.PasswordHash, mustChange: false, FloorApp.Now, Stop)
        )!;
        await using var gerd = await floor.StrangerAsync(Screen.Phone);
        await gerd.SignInAsync("Gerd");
        await gerd.Page.RunAndWaitForResponseAsync(
            () => gerd.OpenAsync("/jobs"),
            reply => reply.Url.EndsWith("/live", StringComparison.Ordinal)
        );
        await using var olga = await floor.VisitAsync(FloorApp.Owner, Screen.Phone);

        await olga.OpenAsync($"/people/{gone.Id}");
        await olga.Page.GetByLabel("May sign in").UncheckAsync();
        await olga.ShotIfWantedAsync("person");
        await olga.PressAsync("End all sign-ins");
        await gerd.Page.WaitForURLAsync(url => url.Contains("/sign-in", StringComparison.Ordinal));
        await olga.OpenAsync($"/people/{gone.Id}");
        await olga.Page.GetByLabel("May sign in").UncheckAsync();
        await olga.PressAsync("Change");
        await olga.SeesAsync("Let go");

        await gerd.SignInFailsAsync("Gerd");
    }

    [Fact]
    public async Task The_last_owner_stays_one()
    {
        await using var olga = await floor.VisitAsync(FloorApp.Owner, Screen.Phone);
        await olga.OpenAsync($"/people/{floor.Author(FloorApp.Owner).Id}");

        await olga.Page.GetByLabel("Helper: logs, takes jobs").CheckAsync();
        await olga.PressAsync("Change");

        await olga.SeesAsync("Olga is the last owner. Make somebody else an owner first");
    }

    private async Task<string> LinkAsync(string name, string role)
    {
        await using var olga = await floor.VisitAsync(FloorApp.Owner, Screen.Phone);
        await olga.OpenAsync("/people");
        await olga.TypeAsync("Who it is for", name);
        await olga.Page.GetByLabel($"{role}:").First.CheckAsync();
        await olga.PressAsync("Make the link");
        await olga.ShotIfWantedAsync("people");
        return new Uri(await olga.Main.Locator("a.secret").InnerTextAsync()).AbsolutePath;
    }
}
