using System.Globalization;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>One backup that was restored and looked at.</summary>
/// <param name="Taking">How long it took to make.</param>
/// <param name="Restoring">How long until it was back, in a fresh folder with a server made for it.</param>
/// <param name="Bytes">How large the file was.</param>
/// <param name="Entries">In the log that was restored.</param>
/// <param name="Meanwhile">Acknowledged while it was taken.</param>
/// <param name="Found">What had been acknowledged before it began, held against the log that came back.</param>
/// <param name="IsReadable">Something of the floor could be read in the file.</param>
/// <param name="OpensWithoutPassphrase">Another passphrase opened it.</param>
internal sealed record BackupRun(
    TimeSpan Taking,
    TimeSpan Restoring,
    long Bytes,
    int Entries,
    int Meanwhile,
    Reckoning Found,
    bool IsReadable,
    bool OpensWithoutPassphrase
);

/// <summary>What the drill of the backups came to.</summary>
/// <param name="Seed">Of what the writers wrote, and when each backup began.</param>
/// <param name="Runs">Each backup.</param>
/// <param name="Differing">Backups that did not come back table by table as they were counted.</param>
/// <param name="Acknowledged">Entries the writers were told are stored, in all.</param>
/// <param name="Wrong">Answers no writer should get.</param>
/// <param name="MissedByControls">Faults put in on purpose that were not found.</param>
internal sealed record BackupOutcome(
    int Seed,
    IReadOnlyList<BackupRun> Runs,
    int Differing,
    int Acknowledged,
    IReadOnlyCollection<string> Wrong,
    IReadOnlyList<string> MissedByControls
) : IDrilled
{
    private int Lost => Runs.Sum(run => run.Found.Lost);

    private int Differs => Runs.Sum(run => run.Found.Differs);

    private int Twice => Runs.Sum(run => run.Found.Twice);

    private int Half => Runs.Sum(run => run.Found.Half);

    private int Unequal => Runs.Sum(run => run.Found.Unequal);

    public bool IsPassed =>
        (Lost, Differs, Twice, Half, Unequal, Differing, Wrong.Count, MissedByControls.Count)
            is (0, 0, 0, 0, 0, 0, 0, 0)
        && Runs is [_, ..]
        && Runs.All(run => run is { IsReadable: false, OpensWithoutPassphrase: false, Meanwhile: > 0 });

    public IReadOnlyList<string> Also =>
        Runs is [.., var last]
            ?
            [
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The last one held {last.Entries:N0} entries in {last.Bytes / 1e6:0.0} MB."
                ),
            ]
            : [];

    public IEnumerable<(string What, string Found)> Rows
    {
        get
        {
            yield return ("backups taken and restored", DrillReport.Number(Runs.Count));
            yield return ("entries acknowledged", DrillReport.Number(Acknowledged));
            yield return ("of these while a backup was taken", DrillReport.Number(Runs.Sum(run => run.Meanwhile)));
            yield return ("acknowledged before a backup began and not in it", DrillReport.Number(Lost));
            yield return ("in it with another number or time", DrillReport.Number(Differs));
            yield return ("in it twice", DrillReport.Number(Twice));
            yield return ("half in it", DrillReport.Number(Half));
            yield return ("backups whose tables came back with another count or hash", DrillReport.Number(Differing));
            yield return ("states that differ from a refold of the log that came back", DrillReport.Number(Unequal));
            yield return ("files something could be read in", Count(run => run.IsReadable));
            yield return ("files another passphrase opened", Count(run => run.OpensWithoutPassphrase));
            yield return ("answers that no writer should get", DrillReport.Number(Wrong.Count));
            yield return ("taken in, median and longest", Times(run => run.Taking));
            yield return ("restored in, median and longest", Times(run => run.Restoring));
            yield return (
                "faults put in on purpose that were not found",
                MissedByControls.Count == 0 ? $"0 of {BackupControls.Faults}" : string.Join(", ", MissedByControls)
            );
        }
    }

    private string Count(Func<BackupRun, bool> which) => DrillReport.Number(Runs.Count(which));

    private string Times(Func<BackupRun, TimeSpan> of) =>
        $"{DrillReport.Seconds(Runs.Select(of).Order().ElementAt(Runs.Count / 2))} and {DrillReport.Seconds(Runs.Max(of))}";
}
