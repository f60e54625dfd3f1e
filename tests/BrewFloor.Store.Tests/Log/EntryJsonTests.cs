using System.Text.Json.Nodes;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using UnitsNet;

namespace BrewFloor.Store.Tests.Log;

public class EntryJsonTests
{
    private static readonly Guid Id = FreshFloor.K3;

    public static TheoryData<string> Samples =>
        [.. new DirectoryInfo(Folder).GetFiles("*.json").Select(file => file.Name)];

    private static string Folder => Path.Combine(AppContext.BaseDirectory, "samples");

    [Theory]
    [MemberData(nameof(Samples))]
    public void Every_stored_sample_reads_and_is_written_the_same(string file)
    {
        var json = File.ReadAllText(Path.Combine(Folder, file));
        var (kind, version) = (file.Split('.')[0], int.Parse(file.Split('.')[1][1..], provider: null));

        var written = EntryJson.PayloadOf(EntryJson.Read(kind, version, json));

        Assert.True(Same(json, written), written);
    }

    [Fact]
    public void The_sample_check_can_fail() => Assert.False(Same("""{"volume_l": 20}""", """{"volume_l": 20.5}"""));

    [Fact]
    public void Every_kind_has_a_stored_sample() =>
        Assert.Empty(EntryKinds.ByName.Keys.Except(Samples.Select(s => s.Data.Split('.')[0]), StringComparer.Ordinal));

    [Fact]
    public void A_blank_state_reads_back_equal()
    {
        Assert.Equal(new TankState(Id), FloorJson.Read<TankState>(FloorJson.Of(new TankState(Id))));
        Assert.Equal(new BatchState(Id), FloorJson.Read<BatchState>(FloorJson.Of(new BatchState(Id))));
        Assert.Equal(new CultureState(Id), FloorJson.Read<CultureState>(FloorJson.Of(new CultureState(Id))));
    }

    [Fact]
    public void House_rules_read_back_equal()
    {
        var rules = HouseRules.Defaults(TimeZoneInfo.Utc) with { SilentCautions = ["crop-hopped"] };

        var read = FloorJson.Read<HouseRules>(FloorJson.Of(rules));

        Assert.Equal(rules, read with { Version = 1, Zone = rules.Zone, Altitude = rules.Altitude });
    }

    [Fact]
    public void The_numbers_of_an_objection_read_back_as_what_they_were()
    {
        var objection = Objection.Stop(
            "any",
            new("tank", "K3"),
            new("volume", Volume.FromLiters(20.5)),
            new("limit", Pressure.FromKilopascals(180)),
            new("until", new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero)),
            new("due", new DateOnly(2026, 7, 2)),
            new("count", 3),
            new("share", 0.5),
            new("nothing", null)
        );

        Assert.Equal(objection, FloorJson.Read<Objection>(FloorJson.Of(objection)));
    }

    [Fact]
    public void Every_entry_that_brings_a_batch_or_a_culture_is_known_to_the_door()
    {
        var bringing = EntryKinds.ByName.Values.Where(t => t.GetProperties().Any(p => Brings(p.PropertyType)));

        Assert.Equal(
            [
                "BatchTakenOver",
                "CultureReceived",
                "CultureTakenOver",
                "FillPlanned",
                "Filled",
                "Harvested",
                "ItemCounted",
                "ItemReceived",
            ],
            bringing.Select(t => t.Name).Order(StringComparer.Ordinal)
        );
    }

    private static bool Brings(Type type) =>
        type == typeof(NewBatch)
        || type == typeof(NewCulture)
        || type == typeof(NewItem)
        || type.GetGenericArguments().Any(BringsInside);

    private static bool BringsInside(Type type) => type.GetProperties().Any(p => Brings(p.PropertyType));

    private static bool Same(string one, string other) =>
        JsonNode.DeepEquals(JsonNode.Parse(one), JsonNode.Parse(other));
}
