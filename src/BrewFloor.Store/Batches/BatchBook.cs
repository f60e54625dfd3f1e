using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using Npgsql;

namespace BrewFloor.Store.Batches;

/// <summary>What batches are called and planned as: changed with a version and a history, like every thing.</summary>
public sealed class BatchBook(NpgsqlDataSource database, RulesOnHand rules)
{
    /// <param name="batch">As it should be, with the version it was read at. Its number never changes.</param>
    public async Task<Edited> EditAsync(Batch batch, Author by, CancellationToken stop)
    {
        if (by.Role < Role.Brewer || by.IsToken)
        {
            return new Edited.Refused([Objection.Impossible("may-not-edit")]);
        }

        await using var connection = await database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        var subject = Subject.Batch(batch.Id);
        var opened = await Opening.ReadAsync(connection, [subject], [], [], rules, Locks.Usual, stop);
        if (!opened.Things.Has(subject))
        {
            return new Edited.Refused([Objection.Impossible("unknown-batch", new Number("id", batch.Id))]);
        }

        var states = opened.Kept.ToDictionary(k => k.Key, k => k.Value.State);
        var before = opened.Things.Floor(opened.Rules, states, [subject]).Batch(batch.Id).Thing;
        if (before.Version != batch.Version)
        {
            return new Edited.Overtaken();
        }

        batch = batch with { Number = before.Number, Version = before.Version + 1 };
        opened.Things.Add(batch);
        await StoreAsync(connection, batch, by, stop);
        await new Relook(connection).WriteAsync(opened, states, subject, stop);
        await transaction.CommitAsync(stop);
        return new Edited.Done(batch.Version);
    }

    private static async Task StoreAsync(NpgsqlConnection connection, Batch batch, Author by, CancellationToken stop)
    {
        await using var statements = connection.CreateBatch();
        var thing = Statements.Jsonb(FloorJson.Of(batch));
        statements.Add("UPDATE batches SET version = $2, thing = $3 WHERE id = $1", batch.Id, batch.Version, thing);
        statements.Add(
            """
            INSERT INTO thing_changes (kind, thing_id, version, at, by, thing)
            VALUES ('batch', $1, $2, clock_timestamp(), $3, $4)
            """,
            batch.Id,
            batch.Version,
            by.Id,
            thing.Clone()
        );
        statements.Add("SELECT pg_notify('floor', $1)", $"thing batch {batch.Id}");
        await statements.ExecuteNonQueryAsync(stop);
    }
}
