using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Jobs;

namespace BrewFloor.Web.Tanks;

/// <summary>From what was read to what is shown.</summary>
public static class Bays
{
    public static IEnumerable<Bay> Of(FloorView view, IReadOnlyDictionary<Guid, string> names)
    {
        var jobs = ShownJobs.Of(view, names);
        return view.Floor.Tanks.Select(tank =>
        {
            var held = tank.State.BatchId ?? tank.State.Planned?.BatchId;
            var beer = view.Floor.Batches.FirstOrDefault(batch => batch.Thing.Id == held);
            return new Bay(tank.Thing, tank.State, view.Floor.Rules, view.Now)
            {
                Batch = beer.Thing,
                BatchState = beer.State,
                Jobs = [.. jobs.Where(job => IsOn(job, tank.Thing.Id, tank.State.BatchId))],
            };
        });
    }

    // A job of a batch stands at the tank it names; without one, at every tank that holds the batch.
    private static bool IsOn(ShownJob job, Guid tank, Guid? batch) =>
        job.Job.Subject == Subject.Tank(tank)
        || (
            job.Job.Subject.Kind is SubjectKind.Batch && (job.Job.TankId ?? tank) == tank && job.Job.Subject.Id == batch
        );
}
