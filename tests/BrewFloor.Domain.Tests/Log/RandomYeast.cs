using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Entries about yeast.</summary>
internal static class RandomYeast
{
    public static readonly Dictionary<string, Maker> Makers = new()
    {
        ["culture-received"] = (r, _) =>
            new CultureReceived(
                new(r.NewId(), "House ale", CultureKind.DryPack) { UseBy = new(2020, 9, 30) },
                YeastAmount.Of(Mass.FromGrams(r.Chance(0.95) ? r.Between(5, 500) : 0))
            )
            {
                StoredAt = Temperature.FromDegreesCelsius(r.Between(2, 9)),
            },
        ["culture-taken-over"] = (r, _) =>
            new CultureTakenOver(
                new(r.NewId(), "House lager", r.OneOf(CultureKind.Slurry, CultureKind.Starter))
                {
                    IsMixed = r.Chance(0.05),
                },
                YeastAmount.Of(Volume.FromMilliliters(r.Between(200, 4000))),
                r.Whole(0, 7)
            )
            {
                StoredAt = r.Chance(0.8) ? Temperature.FromDegreesCelsius(r.Between(1, 8)) : null,
            },
        ["pitched"] = Pitched,
        ["harvested"] = Harvested,
        ["counted"] = (r, floor) =>
            Jar(r, floor) is { } jar
                ? new Counted(
                    jar.Thing.Id,
                    r.Whole(1, 5),
                    r.OneOf(1, 10, 100),
                    r.Whole(r.Chance(0.9) ? 50 : 0, 400),
                    r.Whole(0, 60)
                )
                : null,
        ["culture-discarded"] = (r, floor) =>
            Jar(r, floor) is { } jar ? new CultureDiscarded(jar.Thing.Id, "Old") : null,
    };

    private static (Culture Thing, CultureState State)? Jar(RandomFloor r, Floor floor) =>
        floor.Cultures.Count is 0 ? null : r.OneOf<(Culture, CultureState)>([.. floor.Cultures]);

    private static Pitched? Pitched(RandomFloor r, Floor floor)
    {
        if (r.Beer(floor, (_, batch) => batch.Pitches.Count < 3) is not { } beer)
        {
            return null;
        }

        CulturePitched[] jars =
        [
            .. Enumerable
                .Range(0, r.Whole(0, 2))
                .Select(_ => Jar(r, floor))
                .OfType<(Culture Thing, CultureState State)>()
                .DistinctBy(jar => jar.Thing.Id)
                .Select(jar => new CulturePitched(jar.Thing.Id, Some(r, jar.State.Amount))),
        ];
        return new Pitched(beer.Tank.Id, beer.Beer.Id, [.. jars])
        {
            Words = jars.Length is 0 ? "From next door" : null,
        };
    }

    private static YeastAmount Some(RandomFloor r, YeastAmount left)
    {
        var some = left.Value * r.Between(0.2, 1.02);
        return left.IsMass ? YeastAmount.Of(Mass.FromGrams(some)) : YeastAmount.Of(Volume.FromMilliliters(some));
    }

    private static Harvested? Harvested(RandomFloor r, Floor floor)
    {
        if (
            r.Beer(floor, (state, batch) => batch.Pitches is not [] && state.Contents.Volume?.Liters is not < 4)
            is not { } beer
        )
        {
            return null;
        }

        CutTaken[] cuts =
        [
            .. Enumerable
                .Range(0, r.Whole(1, 3))
                .Select(_ => new CutTaken(
                    new(r.NewId(), "House ale", CultureKind.Slurry),
                    r.Any<Cut>(),
                    r.Litres(0.2, 1),
                    null
                )),
        ];
        return new Harvested(beer.Tank.Id, beer.Beer.Id, r.Any<HarvestedFrom>(), [.. cuts])
        {
            StoredAt = Temperature.FromDegreesCelsius(r.Between(1, 6)),
        };
    }
}
