using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Tests.Extract;

/// <summary>The words the extract tests are written in.</summary>
internal static class Words
{
    public static DegreesPlato Plato(double value) => new(value);

    public static SpecificGravity Sg(double value) => SpecificGravity.Of(value);

    public static MassFraction Abw(double percent) => MassFraction.FromPercent(percent);

    public static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);

    public static Refusal OutOfRange(string what, string from, string to, string unit = "") =>
        new("out-of-range", what, from, to, unit);
}
