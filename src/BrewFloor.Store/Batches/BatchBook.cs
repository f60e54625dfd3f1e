using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using Npgsql;

namespace BrewFloor.Store.Batches;

/// <summary>What batches are called and planned as: changed with a version and a history, like every thing.</summary>
public sealed class BatchBook(NpgsqlDataSource database, RulesOnHand rules)
{
    private readonly ThingEdit _edit = new(database, rules);

    /// <param name="batch">As it should be, with the version it was read at. Its number never changes.</param>
    public Task<Edited> EditAsync(Batch batch, Author by, CancellationToken stop) =>
        _edit.WriteAsync(Subject.Batch(batch.Id), floor => Renew(floor.Batch(batch.Id).Thing, batch, by), by, stop);

    private static Renewal Renew(Batch before, Batch batch, Author by) =>
        ThingEdit.Judge(
            by,
            before.Version,
            batch.Version,
            () =>
            {
                var renewed = batch with { Number = before.Number, Version = before.Version + 1 };
                return new Renewal.Yes(renewed.Version, FloorJson.Of(renewed), things => things.Add(renewed));
            }
        );
}
