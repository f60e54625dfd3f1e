using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>What the instrument's scale says.</summary>
public enum GravityScale
{
    Sg2020, // density over that of water, both at 20 °C
    Sg6060, // both at 60 °F
    Plato,
}

public enum Instrument
{
    Hydrometer,
    DensityMeter,
}

/// <summary>A gravity as read: the figure on the scale, the instrument, and how warm the sample was.</summary>
/// <param name="Value">As read, in the unit of the scale.</param>
/// <param name="Scale">Of the instrument.</param>
/// <param name="Instrument">A density meter corrects for temperature itself; a hydrometer does not.</param>
/// <param name="Sample">In °C; null: at the scale's own temperature.</param>
public sealed record GravityRead(double Value, GravityScale Scale, Instrument Instrument, Temperature? Sample)
{
    /// <summary>The gravity at 20 °C behind the reading; refused when no wort or beer reads so, or outside 0 to 40 °C.</summary>
    /// <remarks>Source: Brewing's <see cref="HydrometerCorrection"/> and the sucrose tables of <see cref="DegreesPlato"/>.</remarks>
    public Outcome<SpecificGravity> At20()
    {
        var shown = Shown();
        if (Instrument is Instrument.DensityMeter || Sample is not { } sample || !shown.Gives(out var reading))
        {
            return shown;
        }

        var scale = Scale is GravityScale.Sg6060 ? HydrometerScale.At60Fahrenheit : HydrometerScale.At20Celsius;
        var corrected = HydrometerCorrection.At20(reading, sample, scale);
        return corrected.Gives(out var found) ? found.Gravity : corrected.Refusal!;
    }

    /// <summary><see cref="At20"/>, or nothing.</summary>
    public SpecificGravity? Gravity20 => At20().Gives(out var gravity) ? gravity : null;

    /// <summary>Impossible: a reading that no wort or beer gives.</summary>
    public IEnumerable<Objection> Unreadable()
    {
        if (At20().Refusal is { } refusal)
        {
            yield return Objection.Impossible(
                "gravity-unreadable",
                new("what", refusal.What),
                new("from", refusal.From),
                new("to", refusal.To)
            );
        }
    }

    private Outcome<SpecificGravity> Shown() =>
        Scale is GravityScale.Plato ? new DegreesPlato(Value).ToGravity()
        : Value is >= 0.98 and <= 1.20 ? SpecificGravity.Of(Value)
        : new Refusal("out-of-range", "gravity", "0.98", "1.20");
}
