using BrewFloor.Benchmarks.Drills;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using Npgsql;
using UnitsNet;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>
/// A temperature of beer in a tank through the one way in, against the same statements sent bare: the same locks, rows and
/// round trips, with nothing read out of JSON, judged, folded or made ready to write.
/// </summary>
internal sealed class AppendBench(LoadedFloor floor) : IAsyncDisposable
{
    private readonly NpgsqlDataSource _database = StoreSetup.DataSource(floor.Connections.Application);
    private readonly RulesOnHand _rules = new();
    private readonly List<(Guid Tank, Guid Batch)> _beer = [];
    private FloorLog _log = null!;
    private int _next;

    public async Task PrepareAsync(CancellationToken stop)
    {
        _log = new(_database, _rules);
        var view = await new FloorReader(_database, _rules).FloorAsync(stop);
        foreach (var (_, state) in view.Floor.Tanks)
        {
            if (state.BatchId is { } batch)
            {
                _beer.Add((state.Id, batch));
            }
        }
    }

    /// <exception cref="InvalidOperationException">The two don't write the same rows.</exception>
    public Task DemandSameRowsAsync() => SameRows.DemandAsync(_database, BareAsync, AppendAsync, 20);

    /// <summary>Ours.</summary>
    public async Task AppendAsync()
    {
        var appended = await _log.AppendAsync(new LogRequest(Reading(), DrillFloor.Owner), CancellationToken.None);
        if (appended is not Appended.Stored)
        {
            throw new InvalidOperationException($"Not stored: {appended}");
        }
    }

    /// <summary>The bare way.</summary>
    public async Task BareAsync()
    {
        var stop = CancellationToken.None;
        var entry = Reading();
        Subject[] subjects = [.. entry.Subjects];
        await using var connection = await _database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        DateTimeOffset recorded = default;
        var states = new Dictionary<Guid, (string State, int Entries)>();
        await using (var opening = connection.CreateBatch())
        {
            Opening.Ask(opening, new(subjects) { Entries = [entry.Id] }, _rules, Locks.Usual);
            await using var reader = await opening.ExecuteReaderAsync(stop);
            do
            {
                while (await reader.ReadAsync(stop))
                {
                    if (reader.FieldCount == 1 && reader.GetFieldType(0) == typeof(DateTime))
                    {
                        recorded = Times.Cut(await reader.GetFieldValueAsync<DateTimeOffset>(0, stop));
                    }
                    else if (reader.FieldCount == 8)
                    {
                        states[reader.GetGuid(0)] = (reader.GetString(4), reader.GetInt32(5));
                        _ = reader.GetString(3);
                    }
                }
            } while (await reader.NextResultAsync(stop));
        }

        await using (var writing = connection.CreateBatch())
        {
            Write(writing, entry, subjects, recorded, states);
            await writing.ExecuteNonQueryAsync(stop);
        }

        await transaction.CommitAsync(stop);
    }

    public async ValueTask DisposeAsync() => await _database.DisposeAsync();

    private TemperatureTaken Reading()
    {
        var (tank, batch) = _beer[_next++ % _beer.Count];
        return new(tank, Temperature.FromDegreesCelsius(18.4)) { Id = Guid.CreateVersion7(), BatchId = batch };
    }

    private static void Write(
        NpgsqlBatch batch,
        TemperatureTaken entry,
        Subject[] subjects,
        DateTimeOffset at,
        Dictionary<Guid, (string State, int Entries)> states
    )
    {
        var payload = $$"""{"tank_id": "{{entry.TankId}}", "batch_id": "{{entry.BatchId}}", "temperature_c": 18.4}""";
        Guid[] ids = [.. subjects.Select(s => s.Id)];
        string[] kinds = ["tank", "batch"];
        batch.Add(Locks.OfHead);
        batch.Add(
            Writing.Entry,
            entry.Id,
            at,
            at,
            "temperature",
            1,
            Statements.Jsonb(payload),
            Statements.Instant(null),
            Statements.Long(null),
            Array.Empty<Guid>(),
            Statements.Text(null),
            DrillFloor.Owner.Id,
            false,
            Statements.Jsonb("[]"),
            1,
            Statements.Text(null),
            Array.Empty<string>(),
            false,
            Array.Empty<string>(),
            Array.Empty<string>(),
            new byte[32],
            EntryJson.HashVersion
        );
        batch.Add(Writing.Subjects, ids, kinds, at, Statements.Long(null), entry.Id, entry.Id);
        batch.Add(
            Folding.States,
            ids,
            kinds,
            Statements.Jsonb([.. ids.Select(id => states[id].State)]),
            ids.Select(_ => StateRow.CurrentFold).ToArray(),
            ids.Select(id => states[id].Entries + 1).ToArray(),
            Statements.Instants(ids.Select(_ => (DateTimeOffset?)at)),
            Statements.Instants(ids.Select(_ => (DateTimeOffset?)at.AddHours(8)))
        );
        batch.Add(Folding.HandedBefore, entry.Id);
        batch.Add(
            Folding.HandedNow,
            entry.Id,
            0,
            ids[1],
            ids[0],
            "set-point",
            Statements.Jsonb($$"""{"giver": {"kind": "tank", "id": "{{ids[0]}}"}, "temperature_c": 19}""")
        );
        batch.Add(Writing.Told, new[] { entry.Id });
        batch.Add(Writing.Written, new[] { entry.Id });
    }
}
