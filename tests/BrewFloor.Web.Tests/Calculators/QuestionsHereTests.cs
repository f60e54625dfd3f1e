using AngleSharp.Dom;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Web.Tests.Calculators;

/// <summary>What the page of a tank asks by itself, with the floor's own numbers.</summary>
public sealed class QuestionsHereTests(FloorApp app) : IClassFixture<FloorApp>
{
    private static int _tanks;

    [Fact]
    public async Task An_empty_tank_leads_to_its_own_cleaning_solution()
    {
        var tank = await TankAsync();

        var asked = await FollowAsync(tank, "cip");

        Assert.Equal("800", Said(asked, "diameter"));
        Assert.Equal("dished-din-28011", Said(asked, "bottom"));
        Assert.Empty(asked.QuerySelectorAll(".wrong"));
        Assert.Empty(await LinksAsync(tank, "spunding"));
    }

    [Fact]
    public async Task A_fermenting_tank_with_a_rating_leads_to_closing_its_valve()
    {
        var tank = await TankAsync();
        await FillAsync(tank, pitched: true);

        var asked = await FollowAsync(tank, "spunding");

        Assert.Equal("1.010", Said(asked, "final-gravity"));
        Assert.Equal("19.5", Said(asked, "temperature"));
        Assert.NotEmpty(asked.QuerySelectorAll("#calc-answer dd"));
        Assert.Empty(await LinksAsync(tank, "slurry"));
    }

    [Fact]
    public async Task Wort_without_yeast_leads_to_how_much_slurry()
    {
        var tank = await TankAsync();
        await FillAsync(tank, pitched: false);

        var asked = await FollowAsync(tank, "slurry");

        Assert.Equal(("300", "1.048"), (Said(asked, "wort"), Said(asked, "original-gravity")));
    }

    [Fact]
    public async Task A_tank_that_holds_no_pressure_is_not_asked_when_to_close()
    {
        var tank = await TankAsync(isRated: false);
        await FillAsync(tank, pitched: true);

        Assert.Empty(await LinksAsync(tank, "spunding"));
        Assert.NotEmpty(await LinksAsync(tank, "fermentation-heat"));
    }

    [Fact]
    public async Task An_empty_tank_without_a_rating_is_purged_without_pressure()
    {
        var tank = await TankAsync(isRated: false);

        Assert.NotEmpty(await LinksAsync(tank, "purge-sweep"));
        Assert.Empty(await LinksAsync(tank, "purge-cycles"));
    }

    [Fact]
    public async Task A_temperature_from_before_the_beer_came_is_not_the_beers()
    {
        var tank = await TankAsync();
        await app.AppendAsync(
            new TemperatureTaken(tank.Id, Temperature.FromDegreesCelsius(2)) { Id = NewId(), At = Ago(60) }
        );
        await FillAsync(tank, pitched: true, isRead: false);

        var address = Assert.Single(await LinksAsync(tank, "spunding"));

        Assert.DoesNotContain("temperature", address, StringComparison.Ordinal);
    }

    private static string? Said(IParentNode page, string name) =>
        page.QuerySelector($"input[name='{name}']")?.GetAttribute("value")
        ?? page.QuerySelector($"select[name='{name}'] [selected]")?.GetAttribute("value");

    private async Task<string[]> LinksAsync(Tank tank, string calculator)
    {
        var page = await app.As(Role.Viewer).PageAsync($"/tanks/{tank.Code}");
        return
        [
            .. page.QuerySelectorAll("#questions a")
                .Select(link => link.GetAttribute("href")!)
                .Where(address => address.StartsWith($"calculators/{calculator}?", StringComparison.Ordinal)),
        ];
    }

    private async Task<IDocument> FollowAsync(Tank tank, string calculator) =>
        await app.As(Role.Viewer).PageAsync("/" + Assert.Single(await LinksAsync(tank, calculator)));

    private async Task<Tank> TankAsync(bool isRated = true)
    {
        var code = $"Q{Interlocked.Increment(ref _tanks)}";
        var tank = ATank(NewId(), code, 500) with
        {
            Strapping = VesselShape
                .Measured(
                    Length.FromMillimeters(800),
                    Length.FromMillimeters(900),
                    new DishedBottom(DishKind.Kloepper),
                    Length.FromMillimeters(50),
                    new DishedHead(DishKind.Kloepper)
                )
                .Value,
            Rating = isRated ? new(Pressure.FromKilopascals(300), RatingSource.Plate) : null,
            Relief = isRated ? new(Pressure.FromKilopascals(250), new DateOnly(2026, 11, 2)) : null,
        };
        await app.AddAsync(tank);
        return tank;
    }

    private async Task FillAsync(Tank tank, bool pitched, bool isRead = true)
    {
        var batch = NewId();
        await app.AppendAsync(
            new Filled(tank.Id, batch, Litres(300))
            {
                Id = NewId(),
                At = Ago(40),
                NewBatch = new(batch, "Harvest Ale", "Pale ale", BeerKind.Ale)
                {
                    OriginalGravity = SpecificGravity.Of(1.048),
                    LimitOfAttenuation = SpecificGravity.Of(1.010),
                },
            }
        );
        if (pitched)
        {
            await app.AppendAsync(
                new Pitched(tank.Id, batch, [])
                {
                    Id = NewId(),
                    At = Ago(38),
                    Words = "dry yeast",
                }
            );
        }

        if (pitched && isRead)
        {
            await app.AppendAsync(
                new TemperatureTaken(tank.Id, Temperature.FromDegreesCelsius(19.5))
                {
                    Id = NewId(),
                    At = Ago(2),
                    BatchId = batch,
                }
            );
        }
    }
}
