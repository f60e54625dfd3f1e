using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;

namespace BrewFloor.Web.Log;

/// <summary>From lines of the log to lines of a page.</summary>
public sealed class TimelineLines(LogReader log)
{
    private const int PageLength = 30;

    /// <summary>A subject's timeline, the latest first.</summary>
    /// <param name="tanks">The code of each tank, where the page is not about one.</param>
    public async Task<(IReadOnlyList<TimelineLine> Lines, string? Earlier)> OfAsync(
        Subject subject,
        string? before,
        IReadOnlyDictionary<Guid, string>? tanks,
        CancellationToken stop
    )
    {
        var page = await log.TimelineAsync(subject, before, PageLength, stop);
        var names = await log.NamesAsync(stop);
        var things = await log.ThingNamesAsync(stop);
        var mends = page
            .Items.Where(line => line.Entry is Corrected or Struck)
            .ToDictionary(line => line.Entry.Id, line => line);
        return ([.. page.Items.Select(line => Shown(line, names, things, mends, tanks))], page.Next);
    }

    public async Task<TimelineLine?> OneAsync(
        Guid id,
        IReadOnlyDictionary<Guid, string>? tanks,
        CancellationToken stop
    ) =>
        await log.EntryAsync(id, stop) is { } line
            ? Shown(
                line,
                await log.NamesAsync(stop),
                await log.ThingNamesAsync(stop),
                new Dictionary<Guid, LogLine>(),
                tanks
            )
            : null;

    private static TimelineLine Shown(
        LogLine line,
        IReadOnlyDictionary<Guid, string> names,
        IReadOnlyDictionary<Guid, string> things,
        IReadOnlyDictionary<Guid, LogLine> mends,
        IReadOnlyDictionary<Guid, string>? tanks
    )
    {
        var mend = line.MendedBy is { } by ? mends.GetValueOrDefault(by) : null;
        var people = line.Entry.DoneBy.Count > 0 ? line.Entry.DoneBy : [line.LoggedBy];
        var tank = line.Entry.Subjects.FirstOrDefault(subject => subject.Kind is SubjectKind.Tank).Id;
        return new TimelineLine(line.Entry, string.Join(", ", people.Select(id => names.GetValueOrDefault(id) ?? "?")))
        {
            Kind = EntryKinds.NameOf(line.Entry),
            Things = things,
            IsStruck = line.Mark is Mark.Struck or Mark.Moved,
            IsCorrected = line.Mark is Mark.Corrected,
            ChangedBy = mend is null ? null : names.GetValueOrDefault(mend.LoggedBy),
            ChangedBecause = mend?.Entry switch
            {
                Corrected corrected => corrected.Reason,
                Struck struck => struck.Reason,
                _ => null,
            },
            Reason = line.Reason,
            Objections = line.Objections,
            Skew = line.Skew,
            SeenAfterwards = line.SeenAfterwards,
            TankCode = tanks is not null ? tanks.GetValueOrDefault(tank) : null,
        };
    }
}
