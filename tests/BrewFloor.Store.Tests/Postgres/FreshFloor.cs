using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.House;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tanks;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using UnitsNet;

namespace BrewFloor.Store.Tests.Postgres;

/// <summary>A database of this test's own, as the app sees it, with the tanks K3, P2 and B1 in it; and the words of the door's tests.</summary>
public sealed class FreshFloor(TestServer server) : IAsyncLifetime, IDbContextFactory<FloorDb>
{
    public static readonly Author Ann = new(Guid.Parse("018f0000-0000-7000-8000-0000000000a1"), Role.Owner);
    public static readonly Author Ben = new(Guid.Parse("018f0000-0000-7000-8000-0000000000a2"), Role.Brewer);
    public static readonly Author Cem = new(Guid.Parse("018f0000-0000-7000-8000-0000000000a3"), Role.Helper);

    public static readonly Guid K3 = Guid.Parse("018f0000-0000-7000-8000-000000000003");
    public static readonly Guid P2 = Guid.Parse("018f0000-0000-7000-8000-000000000002");
    public static readonly Guid B1 = Guid.Parse("018f0000-0000-7000-8000-000000000001");

    private NpgsqlDataSource _database = null!;
    private Connections _connections = null!;

    public NpgsqlDataSource Database => _database;

    public Connections Connections => _connections;

    public RulesOnHand Rules { get; } = new();

    public FloorLog Log => field ??= new(_database, Rules);

    public FloorReader Reader => new(_database, Rules);

    public LogReader Lines => new(_database);

    public JobKeeper Jobs => new(_database, Rules);

    public Inventory Inventory => new(_database, Rules);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _connections = await server.NewDatabaseAsync(Stop);
        _database = StoreSetup.DataSource(_connections.Application);
        foreach (var tank in (Tank[])[ATank(K3, "K3", 1200), ATank(P2, "P2", 1200), ATank(B1, "B1", 1200)])
        {
            Assert.IsType<Edited.Done>(await Inventory.AddAsync(tank, Ann, Stop));
        }
    }

    public async ValueTask DisposeAsync() => await _database.DisposeAsync();

    public FloorDb CreateDbContext()
    {
        var options = new DbContextOptionsBuilder<FloorDb>();
        StoreSetup.Options(options, _database);
        return new(options.Options);
    }

    public static Tank ATank(Guid id, string code, double litres) =>
        new(id, code)
        {
            Type = TankType.ConicalFermenter,
            Material = Material.Plastic,
            HighestCleaning = Temperature.FromDegreesCelsius(60),
            Strapping = DipTable
                .Measured([new(Length.Zero, Volume.Zero), new(Length.FromMillimeters(1500), Litres(litres))])
                .Value,
            Working = Litres(litres * 0.85),
            HeadspaceWanted = 0.10,
        };

    public static Volume Litres(double litres) => Volume.FromLiters(litres);

    public static Guid NewId() => Guid.CreateVersion7();

    /// <summary>So many hours ago, to the microsecond.</summary>
    public static DateTimeOffset Ago(double hours) =>
        Times.Cut(TimeProvider.System.GetUtcNow().AddHours(-hours)).AddTicks(10);

    public static Noted Note(Guid tank, string words, DateTimeOffset at = default) =>
        new(Subject.Tank(tank))
        {
            Id = NewId(),
            At = at,
            Note = words,
        };

    public static Filled Fill(Guid tank, Guid batch, double litres = 900, DateTimeOffset at = default) =>
        new(tank, batch, Litres(litres))
        {
            Id = NewId(),
            At = at,
            NewBatch = new(batch, "Harvest Ale", "Pale ale", BeerKind.Ale),
        };

    public static CultureReceived Received(Guid id) =>
        new(new(id, "House ale", CultureKind.DryPack), YeastAmount.Of(Mass.FromGrams(11)))
        {
            Id = NewId(),
            At = Ago(1),
        };

    public Task<Appended> SendAsync(params LogEntry[] entries) => SendAsync(Ann, entries);

    public Task<Appended> SendAsync(Author author, params LogEntry[] entries) =>
        Log.AppendAsync(Request(author, entries), Stop);

    /// <summary>As a person in a hurry: whatever can be waved through is.</summary>
    public async Task<Appended> InsistAsync(Author author, params LogEntry[] entries)
    {
        var codes = (await Log.CheckAsync(Request(author, entries), Stop))
            .Judged.SelectMany(j => j.Verdict.Objections)
            .Select(o => o.Code);
        Answer answer = new("it is so", [.. codes], AlreadyHappened: true);
        return await Log.AppendAsync(new([.. entries.Select(e => new Sent(e, answer))], author), Stop);
    }

    public static LogRequest Request(Author author, params LogEntry[] entries) =>
        new([.. entries.Select(e => new Sent(e, Answer.None))], author);

    public async Task<TankState> TankAsync(Guid id) =>
        (await Reader.ForAsync([Subject.Tank(id)], Stop)).Floor.Tank(id).State;

    public async Task<BatchState> BatchAsync(Guid id) =>
        (await Reader.ForAsync([Subject.Batch(id)], Stop)).Floor.Batch(id).State;

    /// <summary>As the role that owns the tables: to break something.</summary>
    public async Task AsOwnerAsync(string statement)
    {
        await using var owner = new NpgsqlConnection(_connections.Owner);
        await owner.OpenAsync(Stop);
        await using var command = new NpgsqlCommand(statement, owner);
        await command.ExecuteNonQueryAsync(Stop);
    }

    /// <summary>Asks the server, until so many wait for a lock. As the owner: the app's role isn't told what others wait for.</summary>
    /// <returns>How many wait in the end.</returns>
    public async Task<int> WaitingAsync(int expected)
    {
        const string Question =
            "SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'";
        await using var owner = new NpgsqlConnection(_connections.Owner);
        await owner.OpenAsync(Stop);
        await using var command = new NpgsqlCommand(Question, owner);
        var waiting = 0;
        for (var poll = 0; poll < 400 && waiting < expected; poll++)
        {
            await Task.Delay(20, Stop);
            waiting = (int)(long)(await command.ExecuteScalarAsync(Stop))!;
        }

        return waiting;
    }

    public async Task<T?> AskAsync<T>(string question, params object[] values)
    {
        await using var connection = await _database.OpenConnectionAsync(Stop);
        await using var batch = connection.CreateBatch();
        batch.Add(question, values);
        var answer = await batch.ExecuteScalarAsync(Stop);
        return answer is null or DBNull ? default : (T)answer;
    }
}

internal static class Answers
{
    public static Listed<StoredEntry> Stored(this Appended appended) =>
        appended is Appended.Refused refused
            ? throw new Xunit.Sdk.XunitException("Refused: " + string.Join(", ", refused.Codes()))
            : Assert.IsType<Appended.Stored>(appended).Entries;

    public static string[] Codes(this Appended appended) =>
        [
            .. Assert
                .IsType<Appended.Refused>(appended)
                .Entries.SelectMany(e => e.Verdict.Objections)
                .Select(o => o.Code),
        ];
}
