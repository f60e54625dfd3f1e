using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Jobs;

namespace BrewFloor.Web.Tanks;

/// <summary>One place on the floor as a page shows it: the tank, what is in it, what is due on it, at a moment.</summary>
/// <param name="Now">The moment: the present, or the one that is looked back at.</param>
public sealed record Bay(Tank Tank, TankState State, HouseRules Rules, DateTimeOffset Now)
{
    public Batch? Batch { get; init; }

    public BatchState? BatchState { get; init; }

    /// <summary>The most pressing first.</summary>
    public IReadOnlyList<ShownJob> Jobs { get; init; } = [];

    public bool IsOutOfService => State.OutOfService is not null;

    public bool IsEmpty => !State.HoldsBeer;

    /// <summary>Empty, and nothing stops beer from running in.</summary>
    public bool IsReady => IsEmpty && !Tank.IsRetired && ReadyToFill.IsReady(Tank, State, Rules, Now);

    /// <summary>With what lapsed reckoned in.</summary>
    public Soil Soil => Sanitizing.SoilNow(Tank, State, Rules, Now);

    /// <summary>How far the beer in it is; null without beer.</summary>
    public Stage? Stage =>
        State.HoldsBeer && Batch is { } batch && BatchState is { } state ? state.StageOf(batch, Rules) : null;

    /// <summary>The share of the fall from the original gravity to the limit of attenuation; null when not known.</summary>
    public double? HowFar => Batch is { } batch ? BatchState?.HowFar(batch) : null;

    public bool IsFermentingHard => BatchState?.IsFermentingHard(Rules, Now) is true;

    public TankFigure Figure => Tank.FigureOf(State);

    public TankCondition Condition => TankConditions.Of(this);

    public ShownJob? MostPressing => Jobs.Count > 0 ? Jobs[0] : null;

    /// <summary>Where it stands on the floor page: overdue, due, soon, none, off.</summary>
    public string Group =>
        IsOutOfService ? "off"
        : MostPressing?.At(Now) is Urgency.Overdue ? "overdue"
        : MostPressing?.At(Now) is Urgency.Due ? "due"
        : MostPressing is { } job && job.Job.DueAt - Now < TimeSpan.FromHours(48) ? "soon"
        : "none";

    public string UrgencyClass => Group is "off" or "none" ? "soon" : Group;
}
