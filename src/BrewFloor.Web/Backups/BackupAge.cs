using BrewFloor.Store.Backups;

namespace BrewFloor.Web.Backups;

/// <summary>How old a backup is, and when that is too old.</summary>
public static class BackupAge
{
    /// <summary>A night and two hours (ours): what a nightly backup never is.</summary>
    public static readonly TimeSpan TooOld = TimeSpan.FromHours(26);

    /// <summary>In whole hours from two hours on: nobody wants to know it to the minute.</summary>
    public static TimeSpan Of(BackupNote note, DateTimeOffset now)
    {
        var age = now > note.At ? now - note.At : TimeSpan.Zero;
        return age < TimeSpan.FromHours(2) ? age : TimeSpan.FromHours(Math.Round(age.TotalHours));
    }

    public static bool IsWell(BackupNote? last, DateTimeOffset now) =>
        last is { IsProven: true } && now - last.At < TooOld;
}
