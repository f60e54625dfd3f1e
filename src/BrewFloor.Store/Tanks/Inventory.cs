using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.House;
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
    internal const string Joins = "INSERT INTO tanks (id, code, version, thing) VALUES ($1, $2, 1, $3)";

    private readonly ThingEdit _edit = new(database, rules);

    /// <summary>A code as it is stored: what somebody types in small letters is the same code.</summary>
    public static string Code(string typed) => typed.Trim().ToUpperInvariant();

    public async Task<Edited> AddAsync(Tank tank, Author by, CancellationToken stop)
    {
        tank = tank with { Code = Code(tank.Code), Version = 1 };
        Listed<Objection> objections = [.. ThingEdit.MayNot(by).Concat(TankEdits.New(tank, by.Role))];
        if (objections is not [])
        {
            return new Edited.Refused(objections);
        }

        try
        {
            await using var connection = await database.OpenConnectionAsync(stop);
            await using var batch = connection.CreateBatch();
            var thing = FloorJson.Of(tank);
            batch.Add(Joins, tank.Id, tank.Code, Statements.Jsonb(thing));
            ThingEdit.Record(batch, Subject.Tank(tank.Id), 1, by, thing);
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
    public Task<Edited> EditAsync(Tank tank, Author by, CancellationToken stop) =>
        _edit.WriteAsync(Subject.Tank(tank.Id), floor => Renew(floor.Tank(tank.Id), tank, by), by, stop);

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

    private static Renewal Renew((Tank Thing, TankState State) before, Tank tank, Author by)
    {
        if (before.Thing.Version != tank.Version)
        {
            return new Renewal.No(new Edited.Overtaken());
        }

        var renewed = tank with { Code = before.Thing.Code, Version = before.Thing.Version + 1 };
        Listed<Objection> objections =
        [
            .. ThingEdit.MayNot(by).Concat(TankEdits.Objections(before.Thing, renewed, before.State, by.Role)),
        ];
        return objections is []
            ? new Renewal.Yes(renewed.Version, FloorJson.Of(renewed), things => things.Add(renewed))
            : new Renewal.No(new Edited.Refused(objections));
    }
}
