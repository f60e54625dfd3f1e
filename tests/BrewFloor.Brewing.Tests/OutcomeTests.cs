namespace BrewFloor.Brewing.Tests;

public class OutcomeTests
{
    private static readonly Refusal TooCold = new("out-of-range", "temperature", "0", "40", "°C");

    [Fact]
    public void A_value_is_handed_out()
    {
        Outcome<double> outcome = 4.2;

        Assert.True(outcome.IsDone && outcome.Gives(out var value) && value == 4.2);
        Assert.Null(outcome.Refusal);
        Assert.Equal(4.2, outcome.Value);
    }

    [Fact]
    public void A_refusal_says_why_and_never_passes_for_a_value()
    {
        Outcome<double> outcome = TooCold;

        Assert.False(outcome.IsDone || outcome.Gives(out _));
        Assert.Equal(TooCold, outcome.Refusal);
        Assert.Throws<InvalidOperationException>(() => outcome.Value);
    }
}
