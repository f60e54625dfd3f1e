using BrewFloor.Store.Backups;

namespace BrewFloor.Store.Tests.Backups;

public sealed class KeepingTests
{
    private static readonly DateTimeOffset Night = new(2026, 11, 1, 3, 0, 0, TimeSpan.Zero);

    // A letter a night, the oldest first: p proven, m made and not proven, f failed.
    [Theory]
    [InlineData("ppppp", 3, "0 1")]
    [InlineData("ppp", 3, "")]
    [InlineData("", 3, "")]
    [InlineData("ppmmm", 3, "0")] // the last proven one is older than the three, and stays
    [InlineData("pmmmm", 1, "1 2 3")]
    [InlineData("mmmm", 1, "0 1 2")]
    [InlineData("pfpfp", 2, "0")] // what failed takes no place
    [InlineData("pffff", 1, "")]
    public void The_newest_stay_and_so_does_the_last_proven_one(string nights, int keep, string gone) =>
        Assert.Equal(
            gone,
            string.Join(' ', Keeping.ToDelete(nights.Select(Note), keep).Select(note => note.File).Order())
        );

    private static BackupNote Note(char how, int night) =>
        new(
            Night.AddDays(night),
            $"{night}",
            how is 'f' ? null : 1,
            how is 'p' ? Night.AddDays(night) : null,
            how is 'p' ? null : "why",
            IsNightly: true
        );
}
