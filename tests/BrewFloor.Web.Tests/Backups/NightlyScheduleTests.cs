using System.Globalization;
using BrewFloor.Web.Backups;

namespace BrewFloor.Web.Tests.Backups;

public sealed class NightlyScheduleTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    [Theory]
    [InlineData("2026-11-25 02:59", "2026-11-24 03:00", false)]
    [InlineData("2026-11-25 03:00", "2026-11-24 03:00", true)]
    [InlineData("2026-11-25 03:00", "2026-11-25 03:00", false)]
    [InlineData("2026-11-25 20:00", "2026-11-25 03:10", false)]
    [InlineData("2026-11-25 20:00", "2026-11-24 03:10", true)] // the machine was off at three
    [InlineData("2026-12-25 20:00", "2026-11-24 03:10", true)] // and for a month: one, not thirty
    [InlineData("2026-11-25 20:00", null, true)] // the first
    public void It_is_due_once_after_its_hour_by_the_sites_clock(string now, string? made, bool due) =>
        Assert.Equal(due, NightlySchedule.IsDue(At(now), Berlin, 3, made is null ? null : At(made), lastTried: null));

    [Theory]
    [InlineData(59, false)]
    [InlineData(61, true)]
    public void After_a_failure_it_waits_an_hour(int minutes, bool due) =>
        Assert.Equal(
            due,
            NightlySchedule.IsDue(
                At("2026-11-25 03:00").AddMinutes(minutes),
                Berlin,
                3,
                At("2026-11-24 03:00"),
                At("2026-11-25 03:00")
            )
        );

    [Theory]
    [InlineData("2026-03-29 12:00", 2, "2026-03-29 03:00")] // the hour that is skipped: an hour later
    [InlineData("2026-10-25 12:00", 2, "2026-10-25 02:00")]
    public void It_comes_once_in_the_nights_the_clock_is_changed(string now, int hour, string last) =>
        Assert.Equal(At(last), NightlySchedule.LastHour(At(now), Berlin, hour));

    private static DateTimeOffset At(string local)
    {
        var at = DateTime.ParseExact(local, "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return new(at, Berlin.GetUtcOffset(at));
    }
}
