using BrewFloor.Brewing.Extract;

namespace BrewFloor.Brewing.Forecast;

/// <summary>What an outlook rests on.</summary>
public enum OutlookBasis
{
    /// <summary>Fewer than three readings: recipe and earlier batches alone.</summary>
    Prior,

    /// <summary>This batch's own readings, with recipe and earlier batches.</summary>
    Readings,
}

/// <summary>Where a fermentation is going.</summary>
/// <remarks>
/// A logistic fall (<see cref="FermentationCurve"/>), with an asymmetry, held to recipe and earlier batches and fitted to
/// the readings; wrong readings weigh little. The bands come from a lattice of falls, each weighed by how plausible it is
/// (Laplace's bell, corrected), and are widened by how far a logistic is off a fall of another model. Dry hops, additions
/// and changes of temperature break it: begin anew. Not a word for tax or for sealing bottles.
/// </remarks>
public sealed class Outlook
{
    private const int Enough = 3;

    private readonly Fitted _fitted;

    private readonly double _now;

    private Outlook(Fitted fitted, double now, OutlookBasis basis, IReadOnlyList<Sign> signs)
    {
        (_fitted, _now, Basis, Signs) = (fitted, now, basis, signs);
        Final = Bands.Of(Values(f => f.Fall.End), Calibration.End).Select(v => new DegreesPlato(v));
        Done = Times(f => f.TimeTo(f.End + Calibration.Done));
        InADay = At(TimeSpan.FromHours(now + 24)).Value;
    }

    /// <summary>Prior, until there are three readings: label it so.</summary>
    public OutlookBasis Basis { get; }

    /// <summary>What looks wrong, with the numbers it rests on.</summary>
    public IReadOnlyList<Sign> Signs { get; }

    /// <summary>Apparent extract at the end, °P.</summary>
    public Band<DegreesPlato> Final { get; }

    /// <summary>When it is within 0.2 °P of its end, since pitching.</summary>
    public Band<TimeSpan> Done { get; }

    /// <summary>Apparent extract 24 h after now, °P: the gravity itself, not a reading of it.</summary>
    public Band<DegreesPlato> InADay { get; }

    /// <summary>From what is believed and what was read.</summary>
    /// <param name="prior">Recipe, pitching and earlier batches.</param>
    /// <param name="readings">In the order of time; none is fine. 0 to 2,000 h, -2 to 40 °P, 500 at most.</param>
    /// <param name="now">Since pitching; not before the last reading, to 3,000 h.</param>
    /// <returns>Refused outside, with the row of a reading.</returns>
    public static Outcome<Outlook> From(FermentationPrior prior, IReadOnlyList<GravityReading> readings, TimeSpan now)
    {
        var earliest = readings.Count > 0 ? readings[^1].After.TotalHours : 0;
        var refusal =
            Accepted.Between(0, 500, readings.Count, "readings")
            ?? RefusalOf(readings)
            ?? Accepted.Between(earliest, 3000, now.TotalHours, "now", "h");
        if (refusal is not null)
        {
            return refusal;
        }

        var believed = Beliefs.Of(prior);
        (double, double)[] read = [.. readings.Select(r => (r.After.TotalHours, r.Extract.Value))];
        var basis = read.Length < Enough ? OutlookBasis.Prior : OutlookBasis.Readings;
        var fitted = new Fitted(believed, basis is OutlookBasis.Prior ? [] : read);
        var signs = basis is OutlookBasis.Prior ? [] : Sign.In(prior, readings, fitted).ToArray();
        return new Outlook(fitted, now.TotalHours, basis, signs);
    }

    /// <summary>Apparent extract at a time, °P.</summary>
    /// <param name="after">Since pitching, 0 to 5,000 h.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<Band<DegreesPlato>> At(TimeSpan after)
    {
        var hours = after.TotalHours;
        if (Accepted.Between(0, 5000, hours, "after", "h") is { } refusal)
        {
            return refusal;
        }

        // What is off at the end is off in proportion to how near the end it is.
        var best = _fitted.Best;
        var besides = Calibration.End * (best.Start - best.At(hours)) / (best.Start - best.End);
        return Bands.Of(Values(f => f.Fall.At(hours)), besides).Select(v => new DegreesPlato(v));
    }

    /// <summary>When it stands at a gravity, since pitching; never is <see cref="TimeSpan.MaxValue"/>.</summary>
    /// <param name="gravity">-2 to 40 °P.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<Band<TimeSpan>> TimeTo(DegreesPlato gravity) =>
        Accepted.Between(-2, 40, gravity.Value, "gravity", "°P") is { } refusal
            ? refusal
            : Times(f => f.TimeTo(gravity.Value));

    private static Refusal? RefusalOf(IReadOnlyList<GravityReading> readings)
    {
        for (var i = 0; i < readings.Count; i++)
        {
            var refusal =
                Accepted.Between(
                    i == 0 ? 0 : readings[i - 1].After.TotalHours,
                    2000,
                    readings[i].After.TotalHours,
                    "after",
                    "h"
                ) ?? Accepted.Between(-2, 40, readings[i].Extract.Value, "gravity", "°P");
            if (refusal is not null)
            {
                return refusal with { Row = i + 1 };
            }
        }

        return null;
    }

    private (double, double)[] Values(Func<WeighedFall, double> of) =>
        [.. _fitted.Falls.Select(f => (of(f), f.Weight))];

    private Band<TimeSpan> Times(Func<Fall, double> of)
    {
        var togo = Math.Abs(of(_fitted.Best) - _now);
        var besides = double.Hypot(
            Calibration.Time * (double.IsInfinity(togo) ? 0 : togo),
            Calibration.TimeAtEnd / _fitted.Best.B
        );
        return Bands.Of(Values(f => of(f.Fall)), besides).Select(Span);
    }

    private static TimeSpan Span(double hours) =>
        hours > 1e6 ? TimeSpan.MaxValue : TimeSpan.FromHours(Math.Max(0, hours));
}
