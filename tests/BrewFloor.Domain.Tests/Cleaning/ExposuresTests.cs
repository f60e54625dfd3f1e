using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class ExposuresTests
{
    private static readonly LogEntry[] WashedTwice = [Washed(1), Rinsed(2), Washed(3), Rinsed(4)];

    public static readonly TheoryData<bool, LogEntry[]> Clearings = new()
    {
        { true, [Exposed(0), .. WashedTwice, Inspected(5), Cleared(6)] },
        { true, [Exposed(0), Cleared(0.5), .. WashedTwice, Inspected(5)] },
        { false, [Exposed(0), .. WashedTwice, Inspected(5)] }, // the old seals are still in
        { false, [Exposed(0), Cleared(0.5), .. WashedTwice] }, // nobody looked
        { false, [Exposed(0), Cleared(0.5), Washed(1), Rinsed(2), Inspected(5)] }, // washed once
        { false, [Exposed(0), Cleared(0.5), Washed(1), Washed(2), Rinsed(3), Inspected(5)] }, // no rinse between is one wash
        { false, [Exposed(0), Cleared(0.5), Washed(1), Rinsed(2), Inspected(3), Washed(4), Rinsed(5)] }, // looked too soon
        { false, [Washed(-1), Exposed(0), Cleared(0.5), Rinsed(1), Washed(2), Rinsed(3), Inspected(5)] }, // one began before
        { false, [Exposed(0), Cleared(0.5), .. WashedTwice, Inspected(5, passed: false)] },
        { false, [Exposed(0), Cleared(0.5), .. WashedTwice, Inspected(5), Exposed(6)] }, // met it again
    };

    [Theory]
    [MemberData(nameof(Clearings))]
    public void Steel_is_clear_when_seals_are_renewed_and_it_was_washed_twice_and_looked_at(
        bool clear,
        LogEntry[] log
    ) => Assert.Equal(clear, K3.IsClearOf(Assert.Single(After(log).ExposedTo)));

    [Fact]
    public void Plastic_never_clears() =>
        Assert.False(Plastic.IsClearOf(After([Exposed(0), Cleared(0.5), .. WashedTwice, Inspected(5)]).ExposedTo[0]));

    [Fact]
    public void The_list_of_exposures_is_bounded() =>
        Assert.Equal(
            16,
            After([
                .. Enumerable.Range(0, 100).Select(LogEntry (i) => Exposed(i, ExposureKind.Allergen, $"nut {i}")),
            ]).ExposedTo.Count
        );
}
