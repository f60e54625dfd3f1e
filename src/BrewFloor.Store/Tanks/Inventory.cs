using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.House;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Tanks;

/// <summary>What became of an edit.</summary>
public abstract record Edited
{
    private Edited() { }

    /// <param name="Version">The new one.</param>
    public sealed record Done(int Version) : Edited;

    public sealed record Refused(Listed<Objection> Objections) : Edited;

    /// <summary>Somebody else changed it after it was read.</summary>
    public sealed record Overtaken : Edited;
}

/// <summary>A thing as it was after one of its changes.</summary>
public sealed record Change<T>(T Thing, DateTimeOffset At, Guid By);

/// <summary>The tanks of the house: added, changed, retired; never deleted, and no code is used twice.</summary>
public sealed class Inventory(NpgsqlDataSource database, RulesOnHand rules)
{
    private const string History = """
        INSERT INTO thing_changes (kind, thing_id, version, at, by, thing) VALUES ('tank', $1, $2, clock_timestamp(), $3, $4)
        """;

    /// <summary>A code as it is stored: what somebody types in small letters is the same code.</summary>
    public static string Code(string typed) => typed.Trim().ToUpperInvariant();

    public async Task<Edited> AddAsync(Tank tank, Author by, CancellationToken stop)
    {
        tank = tank with { Code = Code(tank.Code), Version = 1 };
        Listed<Objection> objections = [.. ByWhom(by).Concat(TankEdits.New(tank, by.Role))];
        if (objections is not [])
        {
            return new Edited.Refused(objections);
        }

        try
        {
            await using var connection = await database.OpenConnectionAsync(stop);
            await using var batch = connection.CreateBatch();
            var thing = FloorJson.Of(tank);
            batch.Add(
                "INSERT INTO tanks (id, code, version, thing) VALUES ($1, $2, 1, $3)",
                tank.Id,
                tank.Code,
                Statements.Jsonb(thing)
            );
            batch.Add(History, tank.Id, 1, by.Id, Statements.Jsonb(thing));
            batch.Add("SELECT pg_notify('floor', $1)", $"thing tank {tank.Id}");
            await batch.ExecuteNonQueryAsync(stop);
            return new Edited.Done(1);
        }
        catch (PostgresException e) when (e.ConstraintName is "ix_tanks_code")
        {
            return new Edited.Refused([Objection.Impossible("code-taken", new Number("tank", tank.Code))]);
        }
        catch (PostgresException e) when (e.ConstraintName is "pk_tanks")
        {
            return new Edited.Overtaken(); // the same form twice
        }
    }

    /// <param name="tank">As it should be, with the version it was read at. Its code never changes.</param>
    public async Task<Edited> EditAsync(Tank tank, Author by, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        var subject = Subject.Tank(tank.Id);
        var opened = await Opening.ReadAsync(connection, [subject], [], [], rules, Locks.Usual, stop);
        if (!opened.Things.Has(subject))
        {
            return new Edited.Refused([Objection.Impossible("unknown-tank", new Number("id", tank.Id))]);
        }

        var state = opened.Kept.ToDictionary(k => k.Key, k => k.Value.State);
        var (before, held) = opened.Things.Floor(opened.Rules, state, [subject]).Tank(tank.Id);
        if (before.Version != tank.Version)
        {
            return new Edited.Overtaken();
        }

        tank = tank with { Code = before.Code };
        Listed<Objection> objections = [.. ByWhom(by).Concat(TankEdits.Objections(before, tank, held, by.Role))];
        if (objections is not [])
        {
            return new Edited.Refused(objections);
        }

        tank = tank with { Version = before.Version + 1 };
        opened.Things.Add(tank);
        await StoreAsync(connection, tank, by, stop);
        await new Relook(connection).WriteAsync(opened, state, subject, stop);
        await transaction.CommitAsync(stop);
        return new Edited.Done(tank.Version);
    }

    /// <summary>Newest first.</summary>
    public async Task<Listed<Change<Tank>>> HistoryAsync(Guid tank, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(
            "SELECT version, at, by, thing FROM thing_changes WHERE kind = 'tank' AND thing_id = $1 ORDER BY version DESC",
            tank
        );
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var changes = new List<Change<Tank>>();
        while (await reader.ReadAsync(stop))
        {
            var thing = TankRow.ToTank(reader.GetString(3), reader.GetInt32(0));
            changes.Add(new(thing, reader.At(1), reader.GetGuid(2)));
        }

        return [.. changes];
    }

    private static IEnumerable<Objection> ByWhom(Author by) =>
        by.Role < Role.Brewer || by.IsToken ? [Objection.Impossible("may-not-edit")] : [];

    private static async Task StoreAsync(NpgsqlConnection connection, Tank tank, Author by, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        var thing = Statements.Jsonb(FloorJson.Of(tank));
        batch.Add("UPDATE tanks SET version = $2, thing = $3 WHERE id = $1", tank.Id, tank.Version, thing);
        batch.Add(History, tank.Id, tank.Version, by.Id, thing.Clone());
        batch.Add("SELECT pg_notify('floor', $1)", $"thing tank {tank.Id}");
        await batch.ExecuteNonQueryAsync(stop);
    }
}
