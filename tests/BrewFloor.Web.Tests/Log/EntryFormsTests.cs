using System.Globalization;
using System.Text.Json.Nodes;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using Microsoft.Extensions.Primitives;
using UnitsNet;

namespace BrewFloor.Web.Tests.Log;

public class EntryFormsTests
{
    // These have a page of their own: the entry they are about is in its address.
    private static readonly string[] WithAPage = ["answered", "corrected", "struck"];

    // What no form asks again: it is kept from the entry that is corrected, or edited on a page of its own.
    private static readonly string[] NotAsked = ["typed", "until"];

    public static readonly TheoryData<string> Kinds =
    [
        .. EntryKinds.ByName.Keys.Except(WithAPage).Order(StringComparer.Ordinal),
    ];

    [Fact]
    public void Every_kind_has_a_form() => Assert.Empty(WithoutForm(EntryKinds.ByName.Keys));

    [Fact]
    public void The_form_check_can_fail() => Assert.Equal(["krausened"], WithoutForm(["krausened"]));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_form_asks_only_once_for_each_thing_and_has_words_for_it(string kind)
    {
        var fields = EntryForms.ByKind[kind].Fields(Floor(Sample(kind))).ToArray();

        Assert.Equal(fields.Length, fields.DistinctBy(field => field.Name).Count());
        Assert.All(fields, field => Assert.NotEmpty(Reader.Stranger.Entry(field.Label)));
        Assert.NotEmpty(Reader.Stranger.Verb(kind));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void What_was_logged_comes_back_the_same_from_the_form_that_corrects_it(string kind)
    {
        var logged = Sample(kind);
        var figures = new Figures(CultureInfo.InvariantCulture, TimeZoneInfo.Utc, ReadingUnits.Metric);
        var posted = FormWriter
            .Write(logged, figures)
            .ToDictionary(f => f.Key, f => new StringValues(f.Value), StringComparer.Ordinal);
        var said = new FormReader(posted, new SiteTimes(TimeZoneInfo.Utc, logged.At, CultureInfo.InvariantCulture));

        var typed = EntryForms.ByKind[kind].Read(said, Floor(logged)).ToArray();

        Assert.DoesNotContain(said.Problems.Keys, name => !name.StartsWith("new.", StringComparison.Ordinal));
        Assert.Equal(Payload(logged), Payload(Corrections.Standing(Assert.Single(typed), logged)));
    }

    [Theory]
    [InlineData("packaged", "containers.0.count", "20", "containers.0.kind")]
    [InlineData("packaged", "containers.2.size", "0.5", "containers.2.count")]
    [InlineData("pitched", "cultures.1.amount", "300", "cultures.1.culture")]
    [InlineData("harvested", "cuts.1.density", "1.05", "cuts.1.volume")]
    [InlineData("harvested", "cuts.2.cut", "Middle", "cuts.2.volume")]
    public void Half_a_row_is_asked_again_under_what_it_lacks(string kind, string field, string typed, string lacks)
    {
        var posted = new Dictionary<string, StringValues>(StringComparer.Ordinal)
        {
            [field] = typed,
            [field + ".unit"] = field.EndsWith("amount", StringComparison.Ordinal) ? "mL" : "L",
        };
        var said = new FormReader(
            posted,
            new SiteTimes(TimeZoneInfo.Utc, DateTimeOffset.UnixEpoch, CultureInfo.InvariantCulture)
        );

        _ = EntryForms.ByKind[kind].Read(said, Floor(Sample(kind))).ToArray();

        Assert.Equal("missing", said.Problems[lacks].Code);
    }

    private static IEnumerable<string> WithoutForm(IEnumerable<string> kinds) =>
        kinds.Except(EntryForms.ByKind.Keys, StringComparer.Ordinal).Except(WithAPage, StringComparer.Ordinal);

    private static LogEntry Sample(string kind) =>
        EntryJson.Read(
            kind,
            1,
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "samples", kind + ".v1.json"))
        ) with
        {
            Id = Guid.Parse("018f0000-0000-7000-8000-0000000000e1"),
            At = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero),
        };

    private static string Payload(LogEntry entry)
    {
        var json = JsonNode.Parse(EntryJson.PayloadOf(entry))!.AsObject();
        foreach (var key in NotAsked)
        {
            json.Remove(key);
        }

        return json.ToJsonString();
    }

    // A floor on which the sample is about the tank, the batch and the culture that it names.
    private static FormFloor Floor(LogEntry about)
    {
        var tank = IdOf(about, SubjectKind.Tank);
        var culture = IdOf(about, SubjectKind.Culture);
        return new FormFloor(about.At, Reader.Stranger)
        {
            Rules = HouseRules.Defaults(TimeZoneInfo.Utc),
            Corrected = about,
            Tank = tank is { } id ? K3(id) : null,
            TankState = tank is { } held ? StateOf(held, IdOf(about, SubjectKind.Batch)) : null,
            Item =
                tank is null && IdOf(about, SubjectKind.Item) is { } item
                    ? new Item(item, 4, "Gaskets", ItemKind.Part, StockMeasure.Pieces)
                    : null,
            Culture = culture is { } jar && tank is null ? new Culture(jar, 31, "House ale", CultureKind.Slurry) : null,
        };
    }

    private static TankState StateOf(Guid tank, Guid? batch) =>
        batch is null
            ? new TankState(tank)
            : new TankState(tank) { Contents = new(Holding.Beer, default) { BatchId = batch } };

    private static Guid? IdOf(LogEntry entry, SubjectKind kind) =>
        entry.Subjects.Where(subject => subject.Kind == kind).Select(subject => (Guid?)subject.Id).FirstOrDefault();

    private static Tank K3(Guid id) =>
        new(id, "K3")
        {
            Version = 2,
            Type = TankType.ConicalFermenter,
            Material = Material.Stainless,
            HighestCleaning = Temperature.FromDegreesCelsius(85),
            Strapping = VesselShape
                .Measured(
                    Length.FromMillimeters(1400),
                    Length.FromMillimeters(1500),
                    new ConeBottom(Angle.FromDegrees(60)),
                    Length.FromMillimeters(50),
                    new FlatLid()
                )
                .Value,
            Working = Volume.FromLiters(2200),
        };
}
