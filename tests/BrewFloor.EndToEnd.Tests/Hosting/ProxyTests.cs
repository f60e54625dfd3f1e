using BrewFloor.Domain.Cleaning;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Hosting;

/// <summary>Two instances on one database, nginx before them with the recipe of the documents.</summary>
public sealed class ProxyTests(FloorApp floor) : IClassFixture<FloorApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_signs_in_at_one_instance_acts_on_the_other_and_news_cross()
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Clean));
        await using var other = await floor.BesideAsync(Stop);
        await using var hanna = await floor.StrangerAtAsync(floor.Address, Screen.Phone);
        await hanna.SignInAsync(FloorApp.Helper);
        await hanna.Page.RunAndWaitForResponseAsync(
            () => hanna.OpenAsync($"/tanks/{tank.Code}"),
            reply => reply.Url.EndsWith("/live", StringComparison.Ordinal)
        );
        await using var bert = await floor.StrangerAtAsync(floor.Address, Screen.Phone);
        await bert.SignInAsync(FloorApp.Brewer);

        await bert.OpenAsync($"{other.Urls.First()}/tanks/{tank.Code}/log/noted"); // a cookie is a host's, not a port's
        await bert.TypeAsync("Note", "The gasket is new");
        await bert.PressAsync("Note");
        await bert.SeesAsync("On the server");

        await hanna.SeesAsync("The gasket is new"); // nobody reloaded
    }

    [Fact]
    public async Task Behind_nginx_cookies_are_for_TLS_alone_and_news_come_through()
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Clean));
        await using var other = await floor.BesideAsync(Stop);
        await using var nginx = await Nginx.BeforeAsync(Stop, floor.Address, other.Urls.First());
        await using var hanna = await floor.StrangerAtAsync(nginx.Address, Screen.Phone);
        await hanna.SignInAsync(FloorApp.Helper);
        Assert.All(await hanna.Page.Context.CookiesAsync(), cookie => Assert.True(cookie.Secure, cookie.Name));
        await hanna.Page.RunAndWaitForResponseAsync(
            () => hanna.OpenAsync($"/tanks/{tank.Code}"),
            reply => reply.Url.EndsWith("/live", StringComparison.Ordinal)
        );
        await using var bert = await floor.StrangerAtAsync(nginx.Address, Screen.Phone);
        await bert.SignInAsync(FloorApp.Brewer);

        await bert.OpenAsync($"/tanks/{tank.Code}/log/noted");
        await bert.TypeAsync("Note", "The valve leaks");
        await bert.PressAsync("Note");
        await bert.SeesAsync("On the server");

        await hanna.SeesAsync("The valve leaks");
        Assert.Equal(2, (await nginx.AskedAsync()).Count);
    }
}
