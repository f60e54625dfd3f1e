using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tests.Log;

public class SiteTimesTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    [Fact]
    public void A_typed_minute_is_the_sites() =>
        Assert.Equal(Utc(2026, 3, 14, 13, 2), At(Utc(2026, 3, 14, 18, 0)).Parse("2026-03-14T14:02").Value);

    [Theory] // the night clocks go back: 02:30 is twice, at 00:30 and 01:30 UTC
    [InlineData(0, 45, 0)] // only the first has been
    [InlineData(2, 0, 1)] // both have been: the later
    [InlineData(1, 30, 1)] // to the minute
    public void An_ambiguous_hour_is_the_later_one_not_in_the_future(int hour, int minute, int expectedHour) =>
        Assert.Equal(
            Utc(2026, 10, 25, expectedHour, 30),
            At(Utc(2026, 10, 25, hour, minute)).Parse("2026-10-25T02:30").Value
        );

    [Fact]
    public void Asked_without_saying_what_time_it_is_an_ambiguous_hour_may_be_one_that_has_not_come() =>
        Assert.Equal(
            Utc(2026, 10, 25, 1, 30), // at 00:45 UTC that lies ahead
            new DateTimeOffset(TimeZoneInfo.ConvertTimeToUtc(new DateTime(2026, 10, 25, 2, 30, 0), Berlin))
        );

    [Fact]
    public void A_skipped_hour_gets_a_sentence() =>
        Assert.Equal(
            new Refusal("skipped-hour", "when", "2026-03-29 02:30", ""),
            At(Utc(2026, 4, 1, 0, 0)).Parse("2026-03-29T02:30").Refusal
        );

    [Theory]
    [InlineData("")]
    [InlineData("yesterday")]
    [InlineData("2026-02-30T10:00")]
    [InlineData("14.03.2026 10:00")]
    public void What_is_no_day_and_time_is_asked_again(string text) =>
        Assert.Equal("not-a-moment", At(Utc(2026, 4, 1, 0, 0)).Parse(text).Refusal?.Code);

    private static SiteTimes At(DateTimeOffset now) => new(Berlin, now, CultureInfo.InvariantCulture);

    private static DateTimeOffset Utc(int year, int month, int day, int hour, int minute) =>
        new(year, month, day, hour, minute, 0, TimeSpan.Zero);
}
