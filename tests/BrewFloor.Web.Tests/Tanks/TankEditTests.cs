using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Web.Tests.Tanks;

/// <summary>Two people edit one thing: the second sees both values, and keeps what they typed.</summary>
public sealed class TankEditTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task Of_two_who_edit_one_tank_the_second_sees_both_values_and_loses_nothing()
    {
        await app.TankAsync("E1");
        const string Path = "/tanks/E1/edit";
        var brewer = app.As(Role.Brewer);
        var opened = await brewer.PageAsync(Path);
        (string, string)[] first =
        [
            ("tank-name", "Left one"),
            ("working", "1000"),
            ("cooling", "Jacket"),
            ("vacuum-relief", "true"),
            ("loan-from", "2026-03-01"),
        ];
        Assert.Equal(HttpStatusCode.Found, (await brewer.SendFormAsync(Path, opened, "tank", first)).StatusCode);

        (string, string)[] typed =
        [
            ("tank-name", "Right one"),
            ("working", "9"),
            ("working.unit", "hL"),
            ("headspace", "25"),
            ("loan-from", "2026-03-01"),
        ];
        var second = await brewer.SendFormAsync(Path, opened, "tank", typed);

        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        var page = await second.PageAsync();
        Assert.Equal("Right one", page.QuerySelector("[name=tank-name]")!.GetAttribute("value"));
        Assert.Equal("9", page.QuerySelector("[name=working]")!.GetAttribute("value"));
        Assert.Equal(
            ["Now it is Left one.", "Now it is 1000 L."], // of what both changed, each to something else
            page.QuerySelectorAll("p.small > b").Select(said => said.Words())
        );

        Assert.Equal(HttpStatusCode.Found, (await brewer.SendFormAsync(Path, page, "tank")).StatusCode);
        var tank = (await app.Get<FloorReader>().TankAsync("E1", FloorApp.Stop))!.Floor.Tanks[0].Thing;
        Assert.Equal(("Right one", 900, 0.25), (tank.Name, Math.Round(tank.Working.Liters), tank.HeadspaceWanted));
        Assert.Equal(
            (Domain.Tanks.Cooling.Jacket, true, new DateOnly(2026, 3, 1)), // the first's, whom the second left alone
            (tank.Cooling, tank.HasVacuumRelief, tank.OnLoanFrom!.Value)
        );
    }

    [Fact]
    public async Task What_is_wrong_in_the_form_does_not_make_it_forget_what_it_opened_with()
    {
        await app.TankAsync("E2");
        const string Path = "/tanks/E2/edit";
        var brewer = app.As(Role.Brewer);
        var opened = await brewer.PageAsync(Path);
        await brewer.SendFormAsync(Path, opened, "tank", ("tank-name", "Left one"));

        var wrong = await brewer.SendFormAsync(Path, opened, "tank", ("headspace", "90"));
        var second = await brewer.SendFormAsync(Path, await wrong.PageAsync(), "tank", ("headspace", "30"));

        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        Assert.Equal("Left one", (await second.PageAsync()).QuerySelector("[name=tank-name]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task A_tank_with_a_dip_table_keeps_it_when_something_else_is_edited()
    {
        var tank = await app.TankAsync("E4");
        var brewer = app.As(Role.Brewer);

        var answer = await brewer.SendFormAsync("/tanks/E4/edit", "tank", ("tank-name", "With marks"));

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        var edited = (await app.Get<FloorReader>().TankAsync("E4", FloorApp.Stop))!.Floor.Tanks[0].Thing;
        Assert.Equal(("With marks", tank.Strapping), (edited.Name, edited.Strapping));
    }

    [Fact]
    public async Task A_batch_that_somebody_else_renamed_meanwhile_shows_both_names()
    {
        var tank = await app.TankAsync("E3");
        await app.AppendAsync(FreshFloor.Fill(tank.Id, FreshFloor.NewId()));
        var brewer = app.As(Role.Brewer);
        var opened = await brewer.PageAsync("/batches/1/edit");
        await brewer.SendFormAsync("/batches/1/edit", opened, "thing", ("name", "Spring"));

        var second = await brewer.SendFormAsync("/batches/1/edit", opened, "thing", ("name", "Autumn"));

        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        var page = await second.PageAsync();
        Assert.Equal("Autumn", page.QuerySelector("[name=name]")!.GetAttribute("value"));
        Assert.Contains("Now it is Spring.", page.Body.Words(), StringComparison.Ordinal);
        await brewer.SendFormAsync("/batches/1/edit", page, "thing");
        Assert.Contains("Autumn", (await brewer.PageAsync("/batches/1")).Title!, StringComparison.Ordinal);
    }
}
