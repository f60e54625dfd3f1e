using BrewFloor.Domain.Batches;

namespace BrewFloor.DemoSeed.Tests;

public class BooksTests
{
    private static readonly Played Whole = new(DemoScenario.For(Moments.Afternoon, Moments.Berlin), Moments.Berlin);

    [Fact]
    public void No_litre_of_a_closed_batch_is_missing_beyond_what_measuring_is_off_by()
    {
        var closed = Whole
            .Floor.Batches.Select(batch => batch.State)
            .Where(batch => batch.Closed is not null)
            .ToArray();
        Assert.InRange(closed.Length, 25, 40);
        Assert.All(closed, batch => Assert.Empty(batch.InTanks));
        Assert.All(closed, batch => Assert.Equal(batch.Litres.FilledIn.Liters, Gone(batch.Litres), 6));
        Assert.All(
            closed,
            batch => Assert.InRange(batch.Litres.MeasuringDifference.Liters / batch.Litres.FilledIn.Liters, -0.01, 0.03)
        );
    }

    [Fact]
    public void Most_of_what_was_brewed_was_packaged()
    {
        var sold = Whole.Floor.Batches.Select(b => b.State.Litres).Where(l => l.Packaged.Liters > 0).ToArray();
        Assert.All(sold, litres => Assert.InRange(litres.Packaged.Liters / litres.FilledIn.Liters, 0.85, 0.99));
    }

    private static double Gone(Litres litres) =>
        litres.Packaged.Liters
        + litres.Discarded.Liters
        + litres.Dumped.Liters
        + litres.Harvested.Liters
        + litres.Left.Liters
        + litres.MeasuringDifference.Liters;
}
