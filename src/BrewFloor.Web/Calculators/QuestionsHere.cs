using BrewFloor.Brewing.Calculators;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Tanks;
using Microsoft.AspNetCore.WebUtilities;

namespace BrewFloor.Web.Calculators;

/// <summary>The questions that a tank raises as it stands, with what the floor knows already in their addresses.</summary>
internal static class QuestionsHere
{
    /// <summary>The name of each calculator, and the address of its page.</summary>
    public static IReadOnlyList<(string Name, string Address)> Of(Bay bay, Figures figures) =>
        [
            .. (bay.IsEmpty ? OfEmpty(bay) : OfBeer(bay))
                .Concat(OfShape(bay, "dip"))
                .Select(given => (given.Calculator.Name, AddressOf(given, figures))),
        ];

    private static IEnumerable<Given> OfEmpty(Bay bay) =>
        OfShape(bay, "cip")
            .Append(
                (
                    bay.Tank.PressureLimit is { } limit
                        ? To("purge-cycles").Known("rating", limit.Kilopascals)
                        : To("purge-sweep")
                ).Known("space", bay.Tank.Total.Liters)
            );

    private static IEnumerable<Given> OfShape(Bay bay, string name) =>
        bay.Tank.Strapping is VesselShape { Head: not DomedHead } shape ? [To(name).With(shape)] : [];

    private static IEnumerable<Given> OfBeer(Bay bay) =>
        bay.BatchState is not { } batch ? []
        : bay.Stage is Stage.Filled ? [Slurry(bay, batch)]
        : bay.Stage is Stage.Fermenting ? Fermenting(bay, batch)
        : Finished(bay, batch);

    private static Given Slurry(Bay bay, BatchState batch) =>
        To("slurry").Known("wort", Litres(bay)).Known("original-gravity", batch.OriginalGravity?.Value);

    private static IEnumerable<Given> Fermenting(Bay bay, BatchState batch)
    {
        if (bay.Tank.PressureLimit is { } limit)
        {
            yield return To("spunding")
                .Known("temperature", Celsius(bay))
                .Known("final-gravity", bay.Batch?.LimitOfAttenuation?.Value)
                .Known("rating", limit.Kilopascals)
                .Known("headspace-share", 100 * Headspace(bay) / Litres(bay));
        }

        yield return To("fermentation-heat")
            .Known("wort", Litres(bay))
            .Known("original-gravity", batch.OriginalGravity?.Value)
            .Known("final-gravity", bay.Batch?.LimitOfAttenuation?.Value);
        yield return Alcohol(batch);
    }

    private static IEnumerable<Given> Finished(Bay bay, BatchState batch) =>
        [
            To("sealed-crash")
                .Known("beer", Litres(bay))
                .Known("headspace", Headspace(bay))
                .Known("temperature", Celsius(bay))
                .Known("pressure-gauge", bay.State.PressureNow()?.Kilopascals),
            Alcohol(batch),
            To("kegs").Known("beer", Litres(bay)).Known("temperature", Celsius(bay)),
        ];

    private static Given Alcohol(BatchState batch) =>
        To("alcohol")
            .Known("original-gravity", batch.OriginalGravity?.Value)
            .Known("final-gravity", batch.Gravities is [.., var last] ? last.Gravity.Value : null);

    private static double? Litres(Bay bay) => bay.State.Contents.Volume?.Liters;

    private static double? Headspace(Bay bay) => bay.Tank.Total.Liters - Litres(bay);

    // What was read before this beer came was another's, or the cleaner's.
    private static double? Celsius(Bay bay) =>
        bay.State.Temperature is { } read && read.Moment.At >= bay.State.Contents.Since.At
            ? read.Value.DegreesCelsius
            : null;

    private static Given To(string name) => Given.NothingTo(AllCalculators.ByName[name]);

    // What is unknown, or not what the question is made for, is left for the reader to say.
    private static Given Known(this Given given, string name, double? value)
    {
        var input = given
            .Calculator.Inputs.OfType<QuantityInput>()
            .First(asked => asked.Name.Equals(name, StringComparison.Ordinal));
        return value >= input.From && value <= input.To ? given.With(name, value.Value) : given;
    }

    private static string AddressOf(Given given, Figures figures) =>
        QueryHelpers.AddQueryString(
            "calculators/" + given.Calculator.Name,
            given
                .Calculator.Inputs.Where(input => !given.IsAssumed(input.Name))
                .SelectMany(input => Said(given, input, figures))
        );

    private static IEnumerable<KeyValuePair<string, string?>> Said(Given given, Input input, Figures figures)
    {
        if (input is not QuantityInput quantity)
        {
            return [new(input.Name, given.Choice(input.Name))];
        }

        var unit = FigureWords.OwnOf(quantity.Measure, figures.Units);
        return
        [
            new(input.Name, FigureWords.Typed(given.Figure(input.Name), unit, figures)),
            new(input.Name + Asked.UnitEnding, unit.Symbol),
        ];
    }
}
