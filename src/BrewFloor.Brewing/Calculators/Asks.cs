namespace BrewFloor.Brewing.Calculators;

/// <summary>The ways a calculator asks.</summary>
internal static class Asks
{
    /// <summary>Of the site; the house rules know it where there are any.</summary>
    public static QuantityInput Altitude => Usual("altitude", Measure.Height, -500, 5000, 0);

    /// <summary>Real over apparent attenuation.</summary>
    public static QuantityInput Quotient => Usual("quotient", Measure.Number, 0.78, 0.84, 0.81);

    /// <summary>The lower of the tank's rating and its relief valve's setting: no pressure is worked out without it.</summary>
    public static QuantityInput Rating => Measured("rating", Measure.Pressure, 1, 1000, 200);

    /// <summary>Of wort.</summary>
    public static QuantityInput Original => Measured("original-gravity", Measure.Gravity, 1.0039, 1.1787, 1.048);

    /// <summary>Of beer.</summary>
    public static QuantityInput FinalGravity => Measured("final-gravity", Measure.Gravity, 0.995, 1.1787, 1.010);

    public static QuantityInput Beer => Measured("beer", Measure.Volume, 0, 1e7, 100);

    public static QuantityInput Headspace => Measured("headspace", Measure.Volume, 0, 1e7, 20);

    /// <summary>A number that has to be measured, read or chosen.</summary>
    public static QuantityInput Measured(string name, Measure measure, double from, double to, double start) =>
        new(name, measure, from, to, start);

    /// <summary>A number that has a usual value, for who doesn't know better.</summary>
    public static QuantityInput Usual(string name, Measure measure, double from, double to, double usual) =>
        new(name, measure, from, to, usual) { HasUsual = true };

    /// <summary>Formulas name what they take; under which name it was asked for.</summary>
    public static string AskedAs(string what) =>
        what switch
        {
            "original-extract" => "original-gravity",
            "apparent-extract" or "final-extract" => "final-gravity",
            "surface-level" => "level",
            "depth" => "chamber-depth",
            _ => what,
        };
}
