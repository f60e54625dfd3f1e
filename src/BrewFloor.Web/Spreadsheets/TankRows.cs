using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Tanks;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>A row is a tank: added as its page adds it, and taken over where the row says how it was found.</summary>
internal sealed class TankRows : SheetRows
{
    private static readonly string[] State = ["soil", "closure", "gas", "bath", "dried-on", "never"];

    public override IReadOnlyDictionary<string, string> Example { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["code"] = "K9",
            ["tank-name"] = "Left of the door",
            ["type"] = "Conical fermenter",
            ["material"] = "Stainless steel",
            ["highest-cleaning"] = "85",
            ["working"] = "120",
            ["headspace"] = "20",
            ["diameter"] = "520",
            ["cylinder-height"] = "620",
            ["bottom"] = "Cone",
            ["cone-angle"] = "60",
            ["outlet"] = "38",
            ["head"] = "Flat lid",
            ["soil"] = "Soiled",
            ["closure"] = "Lid on, vent open",
        };

    public override IEnumerable<Field> Fields(Wording words) =>
        [
            .. TankFields.Identity(words, tank: null).Concat(TankFields.Sizes(words, tank: null)).Select(Needed),
            .. TankFields.PressureSide(words, tank: null),
            new ChoiceField("soil", words.Choices<Soil>()),
            new ChoiceField("closure", words.Choices<Closure>()),
            new ChoiceField("gas", words.Choices<Gas>()),
            new ChoiceField("bath", words.Choices<BathKind>()),
            new DayField("dried-on"),
            new FlagField("never"),
        ];

    public override RowRead Read(SheetRow row, SheetFloor floor, Wording words)
    {
        var said = row.Said;
        var code = Inventory.Code(said.Text("code"));
        var known = floor.Tank(code);
        if (code.Length > 0 && known is { Thing.IsRetired: false })
        {
            return new(code) { Key = code, AlreadyThere = words["import-tank-there", new Number("tank", code)] };
        }

        var again = floor.TakenBack(code);
        var tank = TankFields.Read(said, again?.Id ?? row.Id("tank"), before: null);
        if (tank is not null && again is { } was)
        {
            tank = tank with { Version = was.Version + 1 };
        }

        var found = Found(row, tank?.Id ?? default);
        return new(code)
        {
            Key = code,
            Tank = tank,
            Entries = found is null ? [] : [found],
            Figures = tank is null ? [] : Shown(tank, words),
            CannotBe =
                known is not null && again is null ? words["import-tank-retired", new Number("tank", code)] : null,
        };
    }

    private static IEnumerable<string> Sizes(Tank tank, Wording words) =>
        [
            words["import-working", new Number("volume", tank.Working)],
            words["import-total", new Number("volume", tank.Total)],
        ];

    private static string[] Shown(Tank tank, Wording words) =>
        [words.Entry($"choice.TankType.{tank.Type}"), .. Sizes(tank, words)];

    // A form opens with what most tanks are and is looked at; a row must say by itself what the volumes are worked out from.
    private static Field Needed(Field field) =>
        field with
        {
            IsRequired = field.IsRequired || field.Name is "diameter" or "cylinder-height" or "bottom",
            Start = null,
        };

    private static TankTakenOver? Found(SheetRow row, Guid tank)
    {
        var said = row.Said;
        if (Array.TrueForAll(State, name => said.Text(name).Length == 0))
        {
            return null;
        }

        return new TankTakenOver(tank)
        {
            Id = row.Id("taken over"),
            Soil = said.ChoiceOrNone<Soil>("soil") ?? Soil.Unknown,
            Closure = said.Choice<Closure>("closure"), // nobody knows an unknown way of being shut
            Gas = said.ChoiceOrNone<Gas>("gas") ?? Gas.Unknown,
            Bath = said.ChoiceOrNone<BathKind>("bath"),
            DriedOn = said.DayOrNone("dried-on"),
            IsNeverPassivated = said.Flag("never"),
        };
    }
}
