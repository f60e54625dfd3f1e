using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Tanks;

/// <summary>One tank of a floor that is taken over: what is asked, and the two entries it makes.</summary>
/// <remarks>A field is posted under the tank's code: <c>K3.volume</c>.</remarks>
public static class TakenOver
{
    private static readonly string[] IdNames = ["id", "id.1", "new.0"];

    public static IEnumerable<Field> Fields(Tank tank, Wording words) =>
        [.. Asked(tank, words), .. Further(tank, words)];

    private static IEnumerable<Field> Asked(Tank tank, Wording words) =>
        [
            new FlagField(In(tank, "taken")) { Label = "field.taken", Start = "true" },
            new TextField(In(tank, "name")) { Label = "field.beer-in", Hint = "hint.beer-in" },
            new QuantityField(In(tank, "volume"), Measure.Volume)
            {
                Label = "field.volume",
                Hint = "hint.volume-unknown",
            },
            new QuantityField(In(tank, "gravity"), Measure.Gravity) { Label = "field.gravity" },
            new ChoiceField(
                In(tank, "soil"),
                words.Choices([nameof(Soil.Unknown), nameof(Soil.Soiled), nameof(Soil.Clean)], "choice.Soil.")
            )
            {
                Label = "field.soil-empty",
                Start = nameof(Soil.Unknown),
            },
        ];

    private static IEnumerable<Field> Further(Tank tank, Wording words)
    {
        yield return new ChoiceField(In(tank, "beer"), words.Choices<BeerKind>())
        {
            Label = "field.beer",
            Start = nameof(BeerKind.Ale),
            IsExtra = true,
        };
        yield return new QuantityField(In(tank, "original"), Measure.Gravity)
        {
            Label = "field.original",
            IsExtra = true,
        };
        yield return new MomentField(In(tank, "filled-at")) { Label = "field.filled-at", IsExtra = true };
        yield return new MomentField(In(tank, "pitched-at")) { Label = "field.pitched-at", IsExtra = true };
        yield return new TextField(In(tank, "generation"))
        {
            IsNumber = true,
            Label = "field.generation",
            IsExtra = true,
        };
        yield return new ChoiceField(In(tank, "closure"), words.Choices<Closure>())
        {
            Label = "field.closure",
            Start = nameof(Closure.Vented),
            IsExtra = true,
        };
        if (tank.IsStainless)
        {
            yield return new DayField(In(tank, "dried-on"))
            {
                Label = "field.dried-on",
                Hint = "hint.bath-unknown",
                IsExtra = true,
            };
        }
    }

    /// <summary>The ids of the entries and of the batch, made when the page is drawn.</summary>
    public static IEnumerable<(string Name, Guid Id)> Ids(
        Tank tank,
        IReadOnlyDictionary<string, StringValues>? posted
    ) =>
        IdNames
            .Select(name => In(tank, name))
            .Select(name =>
                (name, Guid.TryParse(posted?.GetValueOrDefault(name), out var made) ? made : Guid.CreateVersion7())
            );

    /// <summary>The tank as it was found, and the beer in it when a name was typed.</summary>
    public static IEnumerable<LogEntry> Read(FormReader said, Tank tank)
    {
        if (!said.Flag(In(tank, "taken")))
        {
            yield break;
        }

        var beer = said.TextOrNone(In(tank, "name"));
        var dried = said.DayOrNone(In(tank, "dried-on"));
        yield return new TankTakenOver(tank.Id)
        {
            Id = said.Id(In(tank, "id")),
            Soil = beer is null ? said.ChoiceOrNone<Soil>(In(tank, "soil")) ?? Soil.Unknown : Soil.Unknown,
            Closure = said.ChoiceOrNone<Closure>(In(tank, "closure")) ?? Closure.Vented,
            Gas = Gas.Unknown,
            Contents = Holding.Nothing,
            DriedOn = dried,
        };
        if (beer is not null)
        {
            yield return Beer(said, tank, beer);
        }
    }

    private static BatchTakenOver Beer(FormReader said, Tank tank, string name) =>
        new(
            tank.Id,
            new NewBatch(
                said.Id(In(tank, "new.0")),
                name,
                "",
                said.ChoiceOrNone<BeerKind>(In(tank, "beer")) ?? BeerKind.Ale
            )
            {
                OriginalGravity = said.SpecificGravityOrNone(In(tank, "original")),
            }
        )
        {
            Id = said.Id(In(tank, "id.1")),
            Volume = said.LitresOrNone(In(tank, "volume"), "volume_l"),
            Gravity = said.GravityOrNone(In(tank, "gravity"), Instrument.Hydrometer, null),
            FilledAt = said.MomentOrNone(In(tank, "filled-at")),
            PitchedAt = said.MomentOrNone(In(tank, "pitched-at")),
            Generation = said.WholeOrNone(In(tank, "generation")),
        };

    private static string In(Tank tank, string name) => $"{tank.Code}.{name}";
}
