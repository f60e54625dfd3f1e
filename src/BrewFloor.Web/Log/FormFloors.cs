using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Store.People;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Log;

/// <summary>What the address of a form says it is about: a tank by its code, a batch, a culture or an item by its number, or nothing yet.</summary>
public readonly record struct FormPlace(string? TankCode, int? BatchNumber, int? CultureNumber)
{
    public int? ItemNumber { get; init; }
}

/// <summary>Reads what a form wants to know of the floor.</summary>
public sealed class FormFloors(FloorReader reader, Accounts accounts, Wording words)
{
    /// <returns>Null: no such tank, batch, culture or item.</returns>
    public async Task<FormFloor?> LoadAsync(FormPlace place, CancellationToken stop)
    {
        var whole = await reader.FloorAsync(stop);
        var shelves = (await reader.ShelvesAsync(stop)).Floor;
        var stock = shelves.Items;
        return await AtAsync(place, whole, shelves.Cultures, stock, stop) is { } floor
            ? floor with
            {
                Items = [.. stock.Where(item => !item.Thing.IsNoLongerKept)],
            }
            : null;
    }

    private async Task<FormFloor?> AtAsync(
        FormPlace place,
        FloorView whole,
        IReadOnlyList<(Culture Thing, CultureState State)> cultures,
        IReadOnlyList<(Item Thing, ItemState State)> stock,
        CancellationToken stop
    )
    {
        if (place.TankCode is { } code)
        {
            return await reader.TankAsync(code, stop) is { } tank ? OfTank(tank, whole, cultures) : null;
        }

        if (place.ItemNumber is { } shelved)
        {
            return stock.FirstOrDefault(item => item.Thing.Number == shelved) is { Thing: not null } kept
                ? OfItem(kept, whole, cultures)
                : null;
        }

        if (place.BatchNumber is { } number)
        {
            return await reader.BatchAsync(number, stop) is { } batch
                ? Empty(batch, cultures) with
                {
                    Batch = batch.Floor.Batches[0].Thing,
                    BatchState = batch.Floor.Batches[0].State,
                }
                : null;
        }

        if (place.CultureNumber is { } jar)
        {
            return cultures.FirstOrDefault(c => c.Thing.Number == jar) is { Thing: { } culture, State: { } state }
                ? Empty(whole, cultures) with
                {
                    Culture = culture,
                    CultureState = state,
                }
                : null;
        }

        return Empty(whole, cultures);
    }

    public async Task<IReadOnlyList<(Guid Id, string Name)>> PeopleAsync(CancellationToken stop) =>
        [
            .. (await accounts.AllAsync(stop))
                .Where(person => person.IsActive)
                .Select(person => (person.Id, person.Name)),
        ];

    private FormFloor OfTank(
        FloorView view,
        FloorView whole,
        IReadOnlyList<(Culture Thing, CultureState State)> cultures
    )
    {
        var (tank, state) = view.Floor.Tanks[0];
        var (batch, batchState) = view.Floor.Batches.FirstOrDefault(b => b.Thing.Id == state.BatchId);
        return Empty(whole, cultures) with
        {
            Tank = tank,
            TankState = state,
            Batch = batch,
            BatchState = batchState,
            IsFinished =
                batch is not null && batchState.StageOf(batch, view.Floor.Rules) is Stage.Finished or Stage.Cold,
            OtherTanks = [.. whole.Floor.Tanks.Where(other => other.Thing.Id != tank.Id)],
            OpenRules =
            [
                .. view.Jobs.Where(job => job.Job.At(view.Now) is not Urgency.Soon).Select(job => job.Job.Rule),
            ],
        };
    }

    private FormFloor OfItem(
        (Item Thing, ItemState State) item,
        FloorView whole,
        IReadOnlyList<(Culture Thing, CultureState State)> cultures
    ) =>
        Empty(whole, cultures) with
        {
            Item = item.Thing,
            ItemState = item.State,
            OpenRules = [.. whole.Jobs.Where(job => job.Job.Subject == item.State.Subject).Select(job => job.Job.Rule)],
        };

    private FormFloor Empty(FloorView view, IReadOnlyList<(Culture Thing, CultureState State)> cultures) =>
        new(view.Now, words)
        {
            Rules = view.Floor.Rules,
            Cultures = [.. cultures.Where(culture => culture.State.IsUsable)],
            Strains = cultures.ToDictionary(culture => culture.Thing.Id, culture => culture.Thing.Strain),
            Batches = [.. view.Floor.Batches.Where(batch => batch.State.Closed is null)],
        };
}
