using System.Net;
using System.Text.Json.Nodes;
using BrewFloor.Brewing.Carbonation;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Tests.Api;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Web.Tests.Batches;

/// <summary>The forecast on the page of a batch, and for programs.</summary>
public sealed class ForecastTests(FloorApp app) : IClassFixture<FloorApp>
{
    private static readonly (double HoursAgo, double Gravity)[] Falling =
    [
        (70, 1.047),
        (52, 1.040),
        (40, 1.031),
        (28, 1.022),
        (20, 1.018),
        (10, 1.036), // read from the wrong tank
        (4, 1.013),
    ];

    private static readonly (double HoursAgo, double Gravity)[] Fallen =
    [
        (70, 1.044),
        (66, 1.034),
        (62, 1.022),
        (58, 1.012),
        (52, 1.008),
        (2, 1.008),
    ];

    private static int _tanks;

    [Fact]
    public async Task The_page_draws_it_in_its_bands_and_says_end_time_and_what_looks_wrong()
    {
        var number = await FermentingAsync(Falling);

        var page = await app.As(Role.Viewer).PageAsync($"/batches/{number}");

        var said = page.QuerySelector("#forecast")!.TextContent;
        Assert.Contains("From 7 readings", said, StringComparison.Ordinal);
        Assert.Contains("is 1.036; all others say", said, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector(".plot .band95"));
        Assert.NotNull(page.QuerySelector(".plot .band80"));
        Assert.NotNull(page.QuerySelector(".plot .dot-in"));
    }

    [Fact]
    public async Task Programs_get_it_with_its_bands_its_curve_and_its_signs()
    {
        var number = await FermentingAsync(Falling);
        using var program = await app.WithTokenAsync("read");

        var forecast = (await program.ReadAsync($"/batches/{number}/forecast"))["forecast"]!;

        var final = forecast["final"]!;
        Assert.Equal("readings", forecast.Text("basis"));
        Assert.InRange(Value(final["likely"]), 1.008, 1.013);
        Assert.True(
            Value(final["low_95"]) < Value(final["low_80"]) && Value(final["high_80"]) < Value(final["high_95"])
        );
        Assert.NotNull(forecast["done"]!["likely"]);
        Assert.Equal("doubtful-reading", Assert.Single(forecast["signs"]!.AsArray()).Text("kind"));
        Assert.Equal(25, forecast["curve"]!.AsArray().Count);
    }

    [Fact]
    public async Task Where_nothing_is_foretold_it_says_why()
    {
        var number = await FermentingAsync([], strain: null);
        using var program = await app.WithTokenAsync("read");

        var none = await program.ReadAsync($"/batches/{number}/forecast");
        var page = await app.As(Role.Viewer).PageAsync($"/batches/{number}");

        Assert.Null(none["forecast"]);
        Assert.Equal("not-fermenting", none.Text("why"));
        Assert.Equal(Reader.Stranger["refusal.not-fermenting"], none.Text("text"));
        Assert.Null(page.QuerySelector("#forecast"));
        await (await program.GetAsync("/api/v1/batches/4711/forecast", FloorApp.Stop)).HearAsync(
            HttpStatusCode.NotFound
        );
    }

    [Fact]
    public async Task Any_gravity_is_asked_for_on_the_page_and_by_programs()
    {
        var number = await FermentingAsync(Falling[..5]);
        using var program = await app.WithTokenAsync("read");

        var asked = await app.As(Role.Viewer).PageAsync($"/batches/{number}?at-gravity=1.015&at-gravity.unit=SG");
        var unread = await app.As(Role.Viewer).PageAsync($"/batches/{number}?at-gravity=much&at-gravity.unit=SG");
        var answer = (await program.ReadAsync($"/batches/{number}/forecast?gravity=3.8&unit=°P"))["asked"]!;

        Assert.Contains("At 1.015", asked.QuerySelector("#forecast")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("much", unread.QuerySelector("#f-at-gravity")!.GetAttribute("value"));
        Assert.NotNull(unread.QuerySelector("#f-at-gravity-note.wrong"));
        Assert.Equal(1.01486, Value(answer["at"]), 0.0001); // 3.8 °P by the sugar table
        Assert.True(
            string.CompareOrdinal(answer["time"]!.Text("low_80"), answer["time"]!.Text("likely")) < 0,
            "the band lies around the likely time"
        );
        await (
            await program.GetAsync($"/api/v1/batches/{number}/forecast?gravity=20&unit=SG", FloorApp.Stop)
        ).HearAsync(HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task A_batch_that_makes_its_own_gas_says_when_the_valve_is_closed_and_what_it_is_set_to()
    {
        var wanted = CarbonDioxideContent.OfVolumes(2.2).Value;
        var number = await FermentingAsync(Falling[..5], wanted: wanted);
        var unrated = await FermentingAsync(Falling[..5], wanted: wanted, rated: false);
        using var program = await app.WithTokenAsync("read");

        var page = await app.As(Role.Viewer).PageAsync($"/batches/{number}");
        var never = await app.As(Role.Viewer).PageAsync($"/batches/{unrated}");
        var valve = (await program.ReadAsync($"/batches/{number}/forecast"))["close_valve"]!;

        var said = page.QuerySelector("#valve")!;
        Assert.Contains("for 2.2\u00a0vol", said.TextContent, StringComparison.Ordinal);
        Assert.Equal("hazard", said.PreviousElementSibling!.ClassName); // cautions come first
        Assert.InRange(Value(valve["gauge"]), 140, 170); // 1.65 bar at 20 °C: check CO-32
        Assert.NotNull(valve["time"]!["likely"]);
        Assert.Contains(
            Reader.Stranger["refusal.no-pressure-limit"],
            never.QuerySelector("#valve")!.TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task It_says_which_earlier_batches_of_the_strain_count()
    {
        var earlier = await FermentingAsync(Fallen, "Coast ale", isOver: true);
        await FermentingAsync(Fallen, "Valley ale", isOver: true);
        await FermentingAsync(Fallen, "coast ale"); // still in its tank
        var number = await FermentingAsync(Falling, "coast ale");
        using var program = await app.WithTokenAsync("read");

        var forecast = (await program.ReadAsync($"/batches/{number}/forecast"))["forecast"]!;
        var page = await app.As(Role.Viewer).PageAsync($"/batches/{number}");

        Assert.Equal([earlier], forecast["learned_from"]!.AsArray().Select(n => n!.GetValue<int>()));
        Assert.Contains(
            $"batch no. {earlier}.",
            page.QuerySelector("#forecast")!.TextContent,
            StringComparison.Ordinal
        );
    }

    private static double Value(JsonNode? quantity) => quantity!["value"]!.GetValue<double>();

    private async Task<int> FermentingAsync(
        (double HoursAgo, double Gravity)[] read,
        string? strain = "House ale",
        bool isOver = false,
        CarbonDioxideContent? wanted = null,
        bool rated = true
    )
    {
        var code = $"V{Interlocked.Increment(ref _tanks)}";
        var tank = ATank(NewId(), code, 1200) with
        {
            Rating = rated ? new(UnitsNet.Pressure.FromKilopascals(250), RatingSource.Plate) : null,
            Relief = rated ? new(UnitsNet.Pressure.FromKilopascals(220), new DateOnly(2026, 9, 1)) : null,
        };
        await app.AddAsync(tank);
        var batch = Guid.CreateVersion7();
        await app.AppendAsync(
            new Filled(tank.Id, batch, UnitsNet.Volume.FromLiters(900))
            {
                Id = NewId(),
                At = Ago(80),
                NewBatch = new(batch, "Harvest Ale", "Pale ale", BeerKind.Ale)
                {
                    CarbonDioxideWanted = wanted,
                    OriginalGravity = Brewing.Extract.SpecificGravity.Of(1.048),
                    LimitOfAttenuation = Brewing.Extract.SpecificGravity.Of(1.010),
                },
            }
        );
        if (strain is not null)
        {
            await PitchAsync(tank.Id, batch, strain);
        }

        await ReadAsync(tank.Id, batch, read);
        if (isOver)
        {
            await app.AppendAsync(
                new Discarded(tank.Id, batch, UnitsNet.Volume.FromLiters(900), "drunk")
                {
                    Id = NewId(),
                    At = Ago(1),
                    IsRest = true,
                }
            );
        }

        var view = await app.Get<Store.Log.FloorReader>().BatchesAsync(null, 50, FloorApp.Stop);
        return view.Floor.Batches.First(known => known.Thing.Id == batch).Thing.Number;
    }

    private async Task PitchAsync(Guid tank, Guid batch, string strain)
    {
        var (pack, amount) = (NewId(), YeastAmount.Of(UnitsNet.Mass.FromGrams(500)));
        await app.AppendAsync(
            new CultureReceived(new(pack, strain, CultureKind.DryPack), amount) { Id = NewId(), At = Ago(79) }
        );
        await app.AppendAsync(new Pitched(tank, batch, [new(pack, amount)]) { Id = NewId(), At = Ago(78) });
    }

    private async Task ReadAsync(Guid tank, Guid batch, (double HoursAgo, double Gravity)[] read)
    {
        foreach (var (hours, gravity) in read)
        {
            await app.AppendAsync(
                new GravityTaken(
                    tank,
                    batch,
                    new GravityRead(gravity, GravityScale.Sg2020, Instrument.DensityMeter, null)
                )
                {
                    Id = NewId(),
                    At = Ago(hours),
                }
            );
        }
    }
}
