using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Log;

public class ClocksTests
{
    [Theory]
    [InlineData(120, false)] // two minutes are nobody's fault
    [InlineData(121, true)]
    [InlineData(-86400, false)] // how far back is another question
    public void What_has_not_happened_yet_is_refused_with_both_times(int seconds, bool isRefused)
    {
        var at = Day(0).AddSeconds(seconds);
        Objection[] expected = isRefused
            ? [Objection.Impossible("ahead-of-clock", new("at", at), new("received", Day(0)))]
            : [];

        Assert.Equal(expected, Clocks.Objections(new Opened(K3.Id) { At = at }, Day(0)));
    }

    [Theory]
    [InlineData(120, 0)] // within the tolerance the sender is right
    [InlineData(-120, 0)]
    [InlineData(121, 121)]
    [InlineData(-3600, -3600)] // a phone an hour behind
    public void A_clock_that_is_off_shifts_what_it_timed(int ahead, int shift) =>
        Assert.Equal(
            Day(0).AddSeconds(-shift),
            Clocks.OnOurs(at: Day(0), sentAt: Day(1).AddSeconds(ahead), received: Day(1))
        );

    [Fact]
    public void A_sender_without_a_clock_is_taken_at_its_word() =>
        Assert.Equal(Day(0), Clocks.OnOurs(Day(0), sentAt: null, received: Day(1)));

    [Theory]
    [InlineData(24, false)] // never refused for skew up to 24 h
    [InlineData(-24, false)]
    [InlineData(24.1, true)]
    [InlineData(-24.1, true)]
    public void A_clock_a_day_off_tells_no_time(double hours, bool isRefused) =>
        Assert.Equal(
            isRefused,
            Clocks
                .Objections(new Opened(K3.Id) { At = Day(0), SentAt = Day(1).AddHours(hours) }, Day(1))
                .Any(o => o.Code is "clock-far-off")
        );
}
