using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Yeast;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

/// <summary>What a calculator works with: every input has a value, and it is known which were given and which assumed.</summary>
public sealed class Given
{
    private readonly Dictionary<string, double> _figures = new(StringComparer.Ordinal);

    private readonly Dictionary<string, string> _choices = new(StringComparer.Ordinal);

    private Given(Calculator calculator) => Calculator = calculator;

    /// <summary>Whose inputs these are.</summary>
    public Calculator Calculator { get; }

    /// <summary>Nothing was given: every input stands at its start.</summary>
    /// <param name="calculator">Whose inputs.</param>
    public static Given NothingTo(Calculator calculator) => new(calculator);

    /// <summary>With a number.</summary>
    /// <param name="name">Of a quantity that is asked for.</param>
    /// <param name="value">In the first unit of its measure.</param>
    public Given With(string name, double value)
    {
        var other = Copy();
        other._figures[name] = value;
        return other;
    }

    /// <summary>With a word.</summary>
    /// <param name="name">Of a choice that is asked for.</param>
    /// <param name="option">One of its options.</param>
    public Given With(string name, string option)
    {
        var other = Copy();
        other._choices[name] = option;
        return other;
    }

    /// <summary>Whether nobody gave it.</summary>
    /// <param name="name">Of an input.</param>
    public bool IsAssumed(string name) => !_figures.ContainsKey(name) && !_choices.ContainsKey(name);

    /// <summary>A number as it is worked with.</summary>
    /// <param name="name">Of a quantity that is asked for.</param>
    public Figure Figure(string name)
    {
        var input = Calculator.Inputs.OfType<QuantityInput>().First(i => i.Name.Equals(name, StringComparison.Ordinal));
        return new(_figures.TryGetValue(name, out var value) ? value : input.Start, input.Measure);
    }

    /// <summary>A word as it is worked with.</summary>
    /// <param name="name">Of a choice that is asked for.</param>
    public string Choice(string name) =>
        _choices.TryGetValue(name, out var option)
            ? option
            : Calculator.Inputs.OfType<ChoiceInput>().First(i => i.Name.Equals(name, StringComparison.Ordinal)).Options[
                0
            ];

    internal Volume Volume(string name) => UnitsNet.Volume.FromLiters(Number(name));

    internal Volume Space(string name) => UnitsNet.Volume.FromCubicMeters(Number(name));

    internal Temperature Temperature(string name) => UnitsNet.Temperature.FromDegreesCelsius(Number(name));

    internal TemperatureDelta Difference(string name) => TemperatureDelta.FromKelvins(Number(name));

    internal Pressure Gauge(string name) => Pressure.FromKilopascals(Number(name));

    internal Length Size(string name) => Length.FromMillimeters(Number(name));

    internal Length Height(string name) => Length.FromMeters(Number(name));

    internal Mass Mass(string name) => UnitsNet.Mass.FromKilograms(Number(name));

    /// <summary>Of beer near its end, 1.010 kg/L.</summary>
    internal Mass BeerMass(string name) => UnitsNet.Mass.FromKilograms(Volume(name).Liters * 1.010);

    internal SpecificGravity Gravity(string name) => SpecificGravity.Of(Number(name));

    internal Outcome<DegreesPlato> Extract(string name) => DegreesPlato.From(Gravity(name));

    /// <summary>What the wort of "wort" and "original-gravity" has become at a gravity, and the real extract left in it.</summary>
    internal Outcome<(Fermented Fermented, DegreesPlato Original, DegreesPlato Real)> FermentedTo(string gravity) =>
        from original in Extract("original-gravity")
        from apparent in Extract(gravity)
        from quotient in AttenuationQuotient.Of(Number("quotient"))
        from real in Balling.RealExtract(original, apparent, quotient)
        from fermented in Fermented.From(Volume("wort"), original, real)
        select (fermented, original, real);

    internal Ratio Share(string name) => Ratio.FromPercent(Number(name));

    internal VolumeConcentration ByVolume(string name) => VolumeConcentration.FromPercent(Number(name));

    internal MassFraction ByWeight(string name) => MassFraction.FromPercent(Number(name));

    internal MassConcentration Strength(string name) => MassConcentration.FromGramsPerLiter(Number(name));

    internal MassConcentration Trace(string name) => MassConcentration.FromMilligramsPerLiter(Number(name));

    internal CarbonDioxideContent Carbonation(string name) => CarbonDioxideContent.OfVolumes(Number(name)).Value;

    internal CellDensity Cells(string name) => new(Number(name) * 1e6);

    internal TimeSpan Days(string name) => TimeSpan.FromDays(Number(name));

    internal VolumeFlow Flow(string name) => VolumeFlow.FromLitersPerMinute(Number(name));

    internal Power Power(string name) => UnitsNet.Power.FromKilowatts(Number(name));

    internal int Count(string name) => (int)Number(name);

    internal double Number(string name) => Figure(name).Value;

    private Given Copy()
    {
        var other = new Given(Calculator);
        foreach (var (name, value) in _figures)
        {
            other._figures[name] = value;
        }

        foreach (var (name, option) in _choices)
        {
            other._choices[name] = option;
        }

        return other;
    }
}
