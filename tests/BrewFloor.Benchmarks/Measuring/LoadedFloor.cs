using System.Security.Cryptography;
using BrewFloor.Benchmarks.Drills;
using BrewFloor.Domain.Log;
using BrewFloor.Store;
using BrewFloor.Store.House;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Account;
using Npgsql;
using NpgsqlTypes;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>A database with an invented log in it: entries by COPY, states and snapshots by folding the whole of it.</summary>
internal sealed class LoadedFloor(Connections connections, Generator generator)
{
    public const string OwnerName = "Ines";
    public const string Password = "not a secret at all";

    private const string Entry = """
        COPY entries (id, seq, at, recorded, kind, version, payload, done_by, note, logged_by, by_token, objections,
            house_rules_version, answered, already_happened, done_anyway, cautions_shown, hash, hash_version)
        FROM STDIN (FORMAT binary)
        """;

    private const string Place = """
        COPY entry_subjects (subject_id, subject_kind, at, seq, since, entry_id, words_id) FROM STDIN (FORMAT binary)
        """;

    public Connections Connections => connections;

    public Generator Generator => generator;

    public Task MigrateAsync(CancellationToken stop) => Migrator.MigrateAsync(connections.Owner, "Europe/Berlin", stop);

    public async Task LoadAsync(CancellationToken stop)
    {
        await MigrateAsync(stop);
        await using var services = new ServiceCollection()
            .AddSingleton(TimeProvider.System)
            .AddFloorStore(_ => connections.Application)
            .BuildServiceProvider();
        foreach (var tank in generator.Tanks)
        {
            await services.GetRequiredService<Inventory>().AddAsync(tank, DrillFloor.Owner, stop);
        }

        await using var owner = NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(connections.Owner) { CommandTimeout = 0 }.ConnectionString
        );
        await CopyAsync(owner, stop);
        await Refolding.AllAsync(owner, stop);
        await DoAsync(owner, "VACUUM ANALYZE", stop);
        var jobs = services.GetRequiredService<JobKeeper>();
        while (await jobs.SweepAsync(TimeProvider.System.GetUtcNow(), stop) > 0)
        {
            // Until each has been looked at once.
        }

        await services
            .GetRequiredService<FirstOwner>()
            .ClaimAsync(OwnerName, new Passwords().Hash(Password), "{}", new Site("Here", "Europe/Berlin", 0, 1), stop);
        await DoAsync(owner, "VACUUM ANALYZE", stop);
    }

    private async Task CopyAsync(NpgsqlDataSource owner, CancellationToken stop)
    {
        var kinds = EntryKinds.ByName.Keys.Select(kind => $"('{kind}', {EntryJson.VersionOf(kind)})");
        await DoAsync(owner, $"INSERT INTO entry_kinds (kind, version) VALUES {string.Join(", ", kinds)}", stop);
        await using var connection = await owner.OpenConnectionAsync(stop);
        await CopyBatchesAsync(connection, stop);
        await using (var entries = await connection.BeginBinaryImportAsync(Entry, stop))
        {
            var seq = 0L;
            foreach (var entry in generator.Entries())
            {
                await CopyAsync(entries, entry, ++seq, stop);
            }

            await entries.CompleteAsync(stop);
        }

        await using (var places = await connection.BeginBinaryImportAsync(Place, stop))
        {
            foreach (var (entry, seq) in generator.Entries().Select((entry, i) => (entry, i + 1L)))
            {
                foreach (var subject in entry.Subjects.Distinct())
                {
                    await CopyAsync(places, subject, entry, seq, stop);
                }
            }

            await places.CompleteAsync(stop);
        }

        await DoAsync(owner, "SELECT setval('entry_seq', (SELECT max(seq) FROM entries))", stop);
        await DoAsync(owner, "ANALYZE", stop);
        await DoAsync(owner, Occupancies, stop);
    }

    private async Task CopyBatchesAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        const string Batch = "COPY batches (id, number, version, thing) FROM STDIN (FORMAT binary)";
        await using var batches = await connection.BeginBinaryImportAsync(Batch, stop);
        var number = 0;
        foreach (var brought in generator.Entries().SelectMany(Newcomers.Batches))
        {
            var made = brought with { Number = ++number };
            await batches.StartRowAsync(stop);
            await batches.WriteAsync(made.Id, stop);
            await batches.WriteAsync(number, stop);
            await batches.WriteAsync(1, stop);
            await batches.WriteAsync(FloorJson.Of(made), NpgsqlDbType.Jsonb, stop);
        }

        await batches.CompleteAsync(stop);
    }

    private const string Occupancies = """
        INSERT INTO tank_occupancies (tank_id, batch_id, during)
        SELECT (f.payload ->> 'tank_id')::uuid, (f.payload ->> 'batch_id')::uuid,
               tstzrange(f.at, (SELECT e.at FROM entry_subjects s JOIN entries e ON e.id = s.entry_id
                                WHERE s.subject_id = (f.payload ->> 'batch_id')::uuid AND e.kind = 'emptied'))
        FROM entries f WHERE f.kind = 'filled'
        """;

    private static async Task CopyAsync(NpgsqlBinaryImporter into, LogEntry entry, long seq, CancellationToken stop)
    {
        var kind = EntryKinds.NameOf(entry);
        await into.StartRowAsync(stop);
        await into.WriteAsync(entry.Id, stop);
        await into.WriteAsync(seq, stop);
        await into.WriteAsync(Times.Cut(entry.At), NpgsqlDbType.TimestampTz, stop);
        await into.WriteAsync(Times.Cut(entry.At), NpgsqlDbType.TimestampTz, stop);
        await into.WriteAsync(kind, stop);
        await into.WriteAsync(EntryJson.VersionOf(kind), stop);
        await into.WriteAsync(EntryJson.PayloadOf(entry), NpgsqlDbType.Jsonb, stop);
        await into.WriteAsync(Array.Empty<Guid>(), stop);
        await (entry.Note is { } note ? into.WriteAsync(note, stop) : into.WriteNullAsync(stop));
        await into.WriteAsync(DrillFloor.Owner.Id, stop);
        await into.WriteAsync(false, stop);
        await into.WriteAsync("[]", NpgsqlDbType.Jsonb, stop);
        await into.WriteAsync(1, stop);
        await into.WriteAsync(Array.Empty<string>(), stop);
        await into.WriteAsync(false, stop);
        await into.WriteAsync(Array.Empty<string>(), stop);
        await into.WriteAsync(Array.Empty<string>(), stop);
        await into.WriteAsync(SHA256.HashData(entry.Id.ToByteArray()), stop);
        await into.WriteAsync(EntryJson.HashVersion, stop);
    }

    private static async Task CopyAsync(
        NpgsqlBinaryImporter into,
        Subject subject,
        LogEntry entry,
        long seq,
        CancellationToken stop
    )
    {
        await into.StartRowAsync(stop);
        await into.WriteAsync(subject.Id, stop);
        await into.WriteAsync(SubjectKinds.NameOf(subject.Kind), stop);
        await into.WriteAsync(Times.Cut(entry.At), NpgsqlDbType.TimestampTz, stop);
        await into.WriteAsync(seq, stop);
        await into.WriteAsync(seq, stop);
        await into.WriteAsync(entry.Id, stop);
        await into.WriteAsync(entry.Id, stop);
    }

    private static async Task DoAsync(NpgsqlDataSource owner, string statement, CancellationToken stop)
    {
        await using var command = owner.CreateCommand(statement);
        await command.ExecuteNonQueryAsync(stop);
    }
}
