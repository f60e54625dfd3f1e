using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Account;

/// <summary>Everybody reads and types in their own language, on the same floor.</summary>
public sealed class LanguageTests(FullFloor floor) : IClassFixture<FullFloor>
{
    [Fact]
    public async Task A_brewer_who_chose_german_types_a_comma_and_everybody_else_reads_a_point()
    {
        await using var hanna = await floor.App.VisitAsync(FloorApp.Brewer, Screen.Phone);
        await using var olga = await floor.App.VisitAsync(FloorApp.Owner, Screen.Phone);

        await hanna.OpenAsync("/me");
        await hanna.ChooseAsync("Language of the pages", "Deutsch");
        await hanna.PressAsync("Save");
        await hanna.SeesAsync("Deine Sprache und Einheiten");
        await hanna.OpenAsync("/tanks/F1/log/temperature");
        await hanna.TypeAsync("Temperatur", "18,7");
        await hanna.PressAsync("Temperatur messen");

        await hanna.SeesAsync("18,7 °C");
        Assert.Equal("de", await hanna.Page.Locator("html").GetAttributeAsync("lang"));
        await olga.OpenAsync("/tanks/F1");
        await olga.SeesAsync("18.7 °C");
        Assert.Equal("en", await olga.Page.Locator("html").GetAttributeAsync("lang"));
    }

    [Theory]
    [InlineData("de-CH", "Passwort")]
    [InlineData("fr-FR", "Password")]
    public async Task A_stranger_is_asked_in_the_language_of_their_browser_if_it_is_one_of_ours(
        string asked,
        string word
    )
    {
        await using var stranger = await floor.App.StrangerAsync(Screen.Phone with { Language = asked });

        await stranger.OpenAsync("/sign-in");

        await stranger.SeesAsync(word);
    }
}
