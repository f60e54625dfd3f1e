using BrewFloor.Domain.Cleaning;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Log;

/// <summary>The database goes between opening a form and sending it, and comes back.</summary>
public sealed class AwayTests(FloorApp floor) : IClassFixture<FloorApp>
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task What_was_typed_is_kept_while_the_database_is_away_and_logged_once_when_it_is_back(bool hasScript)
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Sanitized, 31));
        var before = await floor.EntriesOnAsync(tank);
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, Screen.Phone with { HasScript = hasScript });
        hanna.Forgive("503");
        await hanna.OpenAsync($"/tanks/{tank.Code}/log/noted");
        await hanna.TypeAsync("Note", "The lid gasket weeps");

        await floor.TakeAwayDatabaseAsync();
        try
        {
            await hanna.PressAsync("Note");
            await hanna.SeesAsync("The floor log can't be reached");
            await hanna.SeesAsync("The lid gasket weeps");
            await hanna.ShotIfWantedAsync($"away-{hasScript}");
            await hanna.PressAsync("Send again"); // still away, still kept
            await hanna.SeesAsync("The lid gasket weeps");
        }
        finally
        {
            await floor.BringBackDatabaseAsync();
        }

        do
        {
            await hanna.PressAsync("Send again");
        } while ((await hanna.ReadAsync()).Contains("The floor log can't be reached", StringComparison.Ordinal));

        await hanna.SeesAsync("The lid gasket weeps");
        Assert.Equal(before + 1, await floor.EntriesOnAsync(tank));
    }
}
