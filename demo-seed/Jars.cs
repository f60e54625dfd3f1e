using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>One culture in the fridge.</summary>
internal sealed record Jar(Guid Id, string Strain, CultureKind Kind, int MadeOn, YeastAmount Amount);

/// <summary>The yeast of the club: what is bought, kept, counted, pitched and poured away.</summary>
internal sealed class Jars(Story story)
{
    /// <summary>Kept so cold, in °C.</summary>
    public static readonly Temperature Fridge = Temperature.FromDegreesCelsius(3);

    private const int CountAfterDays = 4;

    // A large square of the chamber is 0.1 µL: so many of them, of a sample diluted so often.
    private const int Squares = 5;
    private const double Dilution = 200;

    /// <summary>A pack that comes a few days before it is wanted; all of it is pitched.</summary>
    public Jar Receive(BatchAccount batch)
    {
        var (brew, made) = (batch.Brew, batch.Day(-4));
        var kind = batch.Tank.IsStainless ? CultureKind.LiquidPack : CultureKind.DryPack;
        Jar jar = new(story.Dice.Id($"pack {batch.Id}"), brew.Strain, kind, made, Dose(kind, brew.Litres));
        NewCulture pack = new(jar.Id, jar.Strain, kind)
        {
            UseBy = story.Calendar.On(brew.Day + 70),
            IsMixed = batch.Beer.IsMixed,
        };
        story
            .At(brew.Strain, made, 16, 0, story.Crew.Brews(made))
            .Do(new CultureReceived(pack, jar.Amount) { StoredAt = Fridge });
        return jar;
    }

    /// <summary>Counted on the morning it is wanted, if it is no longer fresh; then pitched, and what is left is poured away later.</summary>
    public void Pitch(Jar jar, BatchAccount batch, Visit visit)
    {
        var (tankId, batchId, day, litres) = (batch.Tank.Id, batch.Id, batch.Brew.Day, batch.Brew.Litres);
        if (jar.Kind is not CultureKind.Slurry)
        {
            visit.Do(new Pitched(tankId, batchId, [new(jar.Id, jar.Amount)]));
            return;
        }

        if (day - jar.MadeOn >= CountAfterDays)
        {
            Count(jar, day);
        }

        visit.Do(new Pitched(tankId, batchId, [new(jar.Id, Dose(jar.Kind, litres))]));
        Discard(jar.Id, jar.Strain, day + 3, "Rest of a jar, not wanted");
    }

    public void Count(Jar jar, int day)
    {
        var cells = 220 + Dice.Below($"cells {jar.Strain} {jar.MadeOn}", 60);
        var dead = (int)Math.Round(cells * (0.04 + (0.016 * (day - jar.MadeOn))));
        story
            .At(jar.Strain, day, 8, 30, story.Crew.Brews(day))
            .Do(new Counted(jar.Id, Squares, Dilution, cells - dead, dead));
    }

    public void Discard(Guid id, string strain, int day, string why) =>
        story.At(strain, day, 17, 30, story.Crew.Helps(day)).Do(new CultureDiscarded(id, why));

    /// <summary>The middle of the cone into a jar; now and then the first of it into another, which nobody wants.</summary>
    public Jar Harvest(BatchAccount batch, int day, Visit visit)
    {
        var (strain, tankId, batchId, litres) = (batch.Strain, batch.Tank.Id, batch.Id, batch.Brew.Litres);
        var id = story.Dice.Id($"slurry {batchId}");
        var amount = Volume.FromLiters(Math.Round(litres * 0.016, 1));
        CutTaken middle = new(
            new(id, strain, CultureKind.Slurry),
            Cut.Middle,
            amount,
            Density.FromGramsPerMilliliter(1.07)
        );
        var isInTwo = Dice.Below($"cuts {batch.Name}", 3) is 0;
        var firstId = story.Dice.Id($"first {batchId}");
        CutTaken first = new(new(firstId, strain, CultureKind.Slurry), Cut.First, Volume.FromLiters(0.6), null);
        visit.Do(
            new Harvested(tankId, batchId, HarvestedFrom.Cone, isInTwo ? [first, middle] : [middle])
            {
                StoredAt = Fridge,
            },
            10
        );
        if (isInTwo)
        {
            Discard(firstId, strain, day + 1, "First cut: brown, trub in it");
        }

        return new(id, strain, CultureKind.Slurry, day, YeastAmount.Of(amount));
    }

    // Some 0.7 g of dry yeast to the litre, or 9 mL of a pack or a slurry.
    private static YeastAmount Dose(CultureKind kind, double litres) =>
        kind is CultureKind.DryPack
            ? YeastAmount.Of(Mass.FromGrams(Math.Round(litres * 0.7)))
            : YeastAmount.Of(Volume.FromLiters(Math.Round(litres * 0.009, 1)));
}
