using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Log;

/// <summary>"May I?" is asked while somebody types, and pressing twice is logging once.</summary>
public sealed class MayITests(FloorApp floor) : IClassFixture<FloorApp>
{
    [Theory]
    [InlineData(Soil.Sanitized, "500", "to the brim it holds")]
    [InlineData(Soil.Clean, "100", "is not sanitized")]
    public async Task The_floor_objects_while_somebody_types_and_nothing_is_logged(
        Soil soil,
        string litres,
        string objection
    )
    {
        var tank = await FoundAsync(soil);
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, Screen.Phone);
        var before = await floor.EntriesOnAsync(tank);
        await FillsInAsync(hanna, tank, litres);

        await hanna.SeesAsync(objection);

        await Violations.NoneAsync(hanna);
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
        Assert.Equal(litres, await hanna.TypedAsync("Volume"));
        Assert.Equal("Kitchen-table pale", await hanna.TypedAsync("Name of the beer"));
    }

    [Fact]
    public async Task What_was_typed_is_kept_over_a_refusal()
    {
        var tank = await FoundAsync(Soil.Clean);
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, Screen.Phone);
        await FillsInAsync(hanna, tank, "100,5");
        await hanna.ChooseAsync("Kind", "Lager");

        await hanna.PressAsync("Fill");

        await hanna.SeesAsync("Not logged yet");
        Assert.Equal("100,5", await hanna.TypedAsync("Volume"));
        Assert.Equal("Kitchen-table pale", await hanna.TypedAsync("Name of the beer"));
        Assert.True(await hanna.Main.GetByLabel("Lager", new() { Exact = true }).IsCheckedAsync());
    }

    [Fact]
    public async Task A_double_tap_logs_once()
    {
        var tank = await FoundAsync(Soil.Sanitized);
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, Screen.Phone);
        var before = await floor.EntriesOnAsync(tank);
        await FillsInAsync(hanna, tank, "100");

        await hanna.Pressable("Fill").DblClickAsync();

        await hanna.SeesAsync("On the server");
        Assert.Equal(before + 1, await floor.EntriesOnAsync(tank));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Going_back_and_sending_again_logs_once(bool hasScript)
    {
        var tank = await FoundAsync(Soil.Clean);
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, Screen.Phone with { HasScript = hasScript });
        var before = await floor.EntriesOnAsync(tank);
        await hanna.OpenAsync($"/tanks/{tank.Code}/log/noted");
        await hanna.TypeAsync("Note", "The tap sticks");
        await hanna.PressAsync("Note");
        await hanna.SeesAsync("On the server");

        await hanna.Page.GoBackAsync();
        Assert.Equal("The tap sticks", await hanna.TypedAsync("Note"));
        await hanna.PressAsync("Note");

        await hanna.SeesAsync("On the server");
        Assert.Equal(before + 1, await floor.EntriesOnAsync(tank));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_brewer_beside_the_helper_allows_what_was_stopped_and_then_it_is_logged(bool hasScript)
    {
        var tank = await FoundAsync(Soil.Clean);
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, Screen.Phone with { HasScript = hasScript });
        await FillsInAsync(hanna, tank, "100");
        await hanna.PressAsync("Fill");
        await hanna.PressAsync("A brewer allows it beforehand");

        await hanna.TypeAsync("Why", "Boiled wort straight in");
        await hanna.Page.Locator("#brewer-name").FillAsync(FloorApp.Brewer);
        await hanna.Page.Locator("#brewer-password").FillAsync(FloorApp.Password);
        await hanna.ShotIfWantedAsync("allowed-by-a-brewer");
        await hanna.PressAsync("Allow beforehand");
        await hanna.SeesAsync("On the server");
        await hanna.SeesAsync(FloorApp.Brewer);

        await FillsInAsync(hanna, tank, "100");
        await hanna.PressAsync("Fill");
        await hanna.SeesAsync("On the server");
    }

    [Fact]
    public async Task A_brewers_passkey_says_yes_on_a_helpers_phone_and_signs_nobody_in()
    {
        var tank = await FoundAsync(Soil.Clean);
        await using var phone = await floor.StrangerByNameAsync(Screen.Phone);
        await phone.HavePasskeysAsync();
        await phone.SignInAsync(FloorApp.Brewer);
        await phone.OpenAsync("/me/access");
        await phone.PressAsync("Add a passkey of this device");
        await phone.SeesAsync("Added");
        await phone.OpenAsync("/more");
        await phone.PressAsync("Sign out");
        await phone.SignInAsync(FloorApp.Helper);
        await FillsInAsync(phone, tank, "100");
        await phone.PressAsync("Fill");
        await phone.PressAsync("A brewer allows it beforehand");
        await phone.TypeAsync("Why", "Boiled wort straight in");
        await phone.ShotIfWantedAsync("allowed-by-a-passkey");

        Assert.Contains("passkey=failed", await SignsInAsync(phone, "passkeys/yes/options"), StringComparison.Ordinal);

        await phone.PressAsync("Yes, by passkey");

        await phone.SeesAsync("On the server");
        await phone.SeesAsync(FloorApp.Brewer);
        await phone.OpenAsync($"/tanks/{tank.Code}/log/noted");
        Assert.EndsWith("/", await SignsInAsync(phone, "passkeys/options"), StringComparison.Ordinal); // so it would
    }

    // What the brewer's passkey answers to a question, sent to the door.
    private static async Task<string> SignsInAsync(Visit phone, string asked) =>
        await phone.Page.EvaluateAsync<string>(
            """
            async asked => {
              const form = document.querySelector('form[data-entry]'), question = new FormData(), body = new FormData();
              for (const name of ['__RequestVerificationToken', 'id']) question.set(name, form.elements[name].value);
              const { options, state } = await (await fetch(asked, { method: 'POST', body: question })).json();
              const publicKey = PublicKeyCredential.parseRequestOptionsFromJSON(options);
              const answer = await navigator.credentials.get({ publicKey });
              body.set('__RequestVerificationToken', form.elements.__RequestVerificationToken.value);
              body.set('credential', JSON.stringify(answer.toJSON()));
              body.set('state', state);
              return (await fetch('passkeys/sign-in', { method: 'POST', body })).url;
            }
            """,
            asked
        );

    private async Task<Tank> FoundAsync(Soil soil)
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, soil, 1));
        return tank;
    }

    private static async Task FillsInAsync(Visit hanna, Tank tank, string litres)
    {
        await hanna.OpenAsync($"/tanks/{tank.Code}/log/filled");
        await hanna.TypeAsync("Volume", litres, "L");
        await hanna.TypeAsync("Name of the beer", "Kitchen-table pale");
        await hanna.TypeAsync("Original gravity", "1.050", "SG");
    }
}
