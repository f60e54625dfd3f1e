using System.Globalization;
using BrewFloor.Brewing.Forecast;

namespace BrewFloor.Brewing.Tests.Forecast;

/// <summary>How the forecast did on one quantity, after one third of the fall.</summary>
internal sealed record Judged(string Quantity, int Third)
{
    private readonly List<(double Error, double Last, double Line, bool In80, bool In95, double Width)> _batches = [];

    public int Batches => _batches.Count;

    public double In80 => _batches.Average(b => b.In80 ? 100.0 : 0);

    public double In95 => _batches.Average(b => b.In95 ? 100.0 : 0);

    public double Error => Median(b => b.Error);

    public double LastValue => Median(b => b.Last);

    public double Line => Median(b => b.Line);

    public double Width => Median(b => b.Width);

    public void Add(Band<double> band, double truth, double last, double line) =>
        _batches.Add(
            (
                Math.Abs(band.Likely - truth),
                Math.Abs(last - truth),
                Math.Abs(line - truth),
                truth >= band.Low80 && truth <= band.High80,
                truth >= band.Low95 && truth <= band.High95,
                band.High80 - band.Low80
            )
        );

    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Quantity, -22} {Third}/3 {Batches, 5} {In80, 6:F1} {In95, 6:F1} {Error, 8:F2} {LastValue, 8:F2} {Line, 8:F2} {Width, 8:F2}"
        );

    private double Median(
        Func<(double Error, double Last, double Line, bool In80, bool In95, double Width), double> of
    ) => _batches.Select(of).Order().ElementAt(_batches.Count / 2);
}
