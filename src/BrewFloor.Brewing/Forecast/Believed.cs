namespace BrewFloor.Brewing.Forecast;

/// <summary>A normal number that is believed before anything is read.</summary>
internal readonly record struct Belief(double Mean, double Error)
{
    public double Precision => 1 / (Error * Error);

    public double Loss(double value) => Math.Pow((value - Mean) / Error, 2) / 2;
}

/// <summary>What is believed of a fall and of its readings, in the order of <see cref="Fall"/>.</summary>
internal sealed record Believed(Belief[] Shape, Belief LnNoise)
{
    public double Loss(ReadOnlySpan<double> shape)
    {
        var sum = 0.0;
        for (var i = 0; i < Shape.Length; i++)
        {
            sum += Shape[i].Loss(shape[i]);
        }

        return sum;
    }
}
