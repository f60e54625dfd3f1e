using BrewFloor.Brewing.Tanks;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Tanks;

/// <summary>What the tank is: volumes, material, rating, and the dates that count from its last works.</summary>
public sealed partial class TankFacts(Wording wording)
{
    [Parameter, EditorRequired]
    public required Bay Bay { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private IEnumerable<(string Key, string Value)> Facts => [.. Sizes(), .. Limits(), .. Works()];

    private IEnumerable<(string Key, string Value)> Sizes()
    {
        var (tank, figures) = (Bay.Tank, wording.Figures);
        yield return ("total", figures.Of(tank.Total));
        yield return ("working", figures.Of(tank.Working));
        if (tank.Strapping is VesselShape shape)
        {
            yield return ("bottom", figures.Of(shape.BottomVolume));
            yield return ("area", shape.InsideArea.SquareMeters.ToString("0.00", figures.Culture) + "\u00a0m²");
        }
    }

    private IEnumerable<(string Key, string Value)> Limits()
    {
        var (tank, figures) = (Bay.Tank, wording.Figures);
        yield return ("material", wording.Entry("choice.Material." + tank.Material));
        yield return ("cleaning", figures.Of(tank.HighestCleaning));
        if (tank.Rating is { } rating)
        {
            var source = wording.Entry("choice.RatingSource." + rating.Source);
            yield return ("rating", $"{figures.Of(rating.Highest)} ({source})");
        }

        if (tank.Relief is { } relief)
        {
            yield return ("relief", figures.Of(relief.Setting));
            var tested = Bay.State.ReliefTested is { } at ? figures.DayOf(at.At) : relief.TestedOn;
            yield return ("relief-tested", figures.DayOfYear(tested));
        }
    }

    private IEnumerable<(string Key, string Value)> Works()
    {
        var (tank, state, figures) = (Bay.Tank, Bay.State, wording.Figures);
        if (tank.IsStainless)
        {
            yield return ("dried", state.Dried is { } dried ? On(dried.At) : wording["bay-unknown"]);
        }

        if (state.GasketChanged is { } gasket)
        {
            yield return ("gasket", On(gasket.At));
        }

        if (tank.OnLoanUntil is { } until)
        {
            yield return ("loan", figures.DayOfYear(until));
        }
    }

    private string On(DateTimeOffset at) => wording.Figures.DayOfYear(wording.Figures.DayOf(at));
}
