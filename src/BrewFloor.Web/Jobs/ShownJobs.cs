using BrewFloor.Domain.Log;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;

namespace BrewFloor.Web.Jobs;

/// <summary>Open jobs with the names of what they are about and of who does them.</summary>
public sealed class ShownJobs(FloorReader reader, LogReader log)
{
    public async Task<IReadOnlyList<ShownJob>> AllAsync(CancellationToken stop) =>
        Of(await reader.JobsAsync(stop), await log.NamesAsync(stop));

    public async Task<ShownJob?> OneAsync(Guid id, CancellationToken stop) =>
        (await AllAsync(stop)).FirstOrDefault(job => job.Open.Id == id);

    /// <summary>The jobs of a view, the most pressing first.</summary>
    public static IReadOnlyList<ShownJob> Of(FloorView view, IReadOnlyDictionary<Guid, string> names) =>
        [
            .. view
                .Jobs.Select(job => Named(job, view, names))
                .OrderByDescending(job => job.At(view.Now))
                .ThenBy(job => job.Job.DueAt),
        ];

    private static ShownJob Named(OpenJob job, FloorView view, IReadOnlyDictionary<Guid, string> names)
    {
        var subject = job.Job.Subject;
        var tank = subject.Kind is SubjectKind.Tank ? subject.Id : job.Job.TankId;
        return new ShownJob(job)
        {
            TankCode = view.Floor.Tanks.FirstOrDefault(t => t.Thing.Id == tank).Thing?.Code,
            BatchNumber = view.Floor.Batches.FirstOrDefault(b => b.Thing.Id == subject.Id).Thing?.Number,
            CultureNumber = view.Floor.Cultures.FirstOrDefault(c => c.Thing.Id == subject.Id).Thing?.Number,
            ItemNumber = view.Floor.Items.FirstOrDefault(i => i.Thing.Id == subject.Id).Thing?.Number,
            TakenBy = job.TakenBy is { } who ? names.GetValueOrDefault(who) ?? "?" : null,
        };
    }
}
