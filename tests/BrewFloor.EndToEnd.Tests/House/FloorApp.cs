using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>The real app on a port of its own, with a database, a data folder and people of its own.</summary>
public sealed class FloorApp(TestServer server, Chromium chromium) : IAsyncLifetime
{
    public const string Password = "wet boots and one phone";
    public const string Owner = "Olga";
    public const string Brewer = "Bert";
    public const string Helper = "Hanna";
    public const string Viewer = "Vera";

    private static readonly string Hash = new Passwords().Hash(Password);

    /// <summary>Of <see cref="Password"/>.</summary>
    public static string PasswordHash => Hash;

    private readonly string _data = Directory.CreateTempSubdirectory("brewfloor-browser-").FullName;
    private readonly Dictionary<string, Author> _people = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _signedIn = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim _door = new(1, 1);
    private WebApplication _app = null!;
    private Connections _database = null!;
    private int _tanks;

    /// <summary>Somebody of each role; without them it is a floor nobody has set up yet.</summary>
    public bool HasPeople { get; init; } = true;

    /// <summary>The path it stands below; empty: the root.</summary>
    public string Below { get; init; } = "";

    public string Address => _app.Urls.First() + Below;

    public IServiceProvider Services => _app.Services;

    public FloorLog Log => Services.GetRequiredService<FloorLog>();

    public FloorReader Reader => Services.GetRequiredService<FloorReader>();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _database = await server.NewDatabaseAsync(Stop);
        _app = await BesideAsync(Stop);
        var accounts = Services.GetRequiredService<Accounts>();
        foreach (var (name, role) in HasPeople ? Roles : [])
        {
            var person = await accounts.AddAsync(name, role, Hash, mustChange: false, Now, Stop);
            _people[name] = new(person!.Id, role);
        }
    }

    /// <summary>Another instance of the app on the same database, with the same secret.</summary>
    public async Task<WebApplication> BesideAsync(CancellationToken stop)
    {
        var app = Serving.Build(
            new StartOptions("serve", [], _data, Port: 0),
            [
                "--environment=Development", // styles and script are read from the source tree
                "--applicationName=BrewFloor.Web",
                $"--ConnectionStrings:BrewFloor={_database.Application}",
                $"--ConnectionStrings:BrewFloorOwner={_database.Owner}",
                $"--{BasePath.Variable}={Below}",
            ]
        );
        await app.StartAsync(stop);
        await app.Services.GetServices<IHostedService>().OfType<FirstMigration>().Single().ExecuteTask!.WaitAsync(stop);
        return app;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync(CancellationToken.None);
        await _app.DisposeAsync();
        Directory.Delete(_data, recursive: true);
        _door.Dispose();
    }

    /// <summary>The database is out of reach until it is brought back.</summary>
    public Task TakeAwayDatabaseAsync() => server.TakeAwayAsync(_database, Stop);

    public Task BringBackDatabaseAsync() => server.BringBackAsync(_database, Stop);

    public static DateTimeOffset Now => TimeProvider.System.GetUtcNow();

    public static DateTimeOffset Ago(double hours) => Now.AddHours(-hours);

    public Author Author(string name) => _people[name];

    /// <summary>Somebody opens a browser on this floor, signed in.</summary>
    public async Task<Visit> VisitAsync(string name, Screen screen)
    {
        var options = screen.Options(Address);
        options.StorageState = await SignedInAsync(name);
        return await Visit.BeginAsync(await chromium.NewContextAsync(options), screen, Address);
    }

    /// <summary>Nobody known.</summary>
    public Task<Visit> StrangerAsync(Screen screen) => StrangerAtAsync(Address, screen);

    /// <summary>Nobody known, at a name of this machine: browsers keep passkeys for names, not for numbers.</summary>
    public Task<Visit> StrangerByNameAsync(Screen screen) =>
        StrangerAtAsync(Address.Replace("127.0.0.1", "localhost", StringComparison.Ordinal), screen);

    /// <summary>Nobody known, at an address of this floor.</summary>
    public async Task<Visit> StrangerAtAsync(string address, Screen screen) =>
        await Visit.BeginAsync(await chromium.NewContextAsync(screen.Options(address)), screen, address);

    /// <summary>A tank of this kind with the next free code, and nothing in its log.</summary>
    public async Task<Tank> AddTankAsync(Func<Guid, string, Tank> make, string? code = null)
    {
        var tank = make(Guid.CreateVersion7(), code ?? $"T{Interlocked.Increment(ref _tanks)}");
        var inventory = Services.GetRequiredService<Inventory>();
        Assert.IsType<Edited.Done>(await inventory.AddAsync(tank, _people[Owner], Stop));
        return tank;
    }

    /// <summary>Where phones open this floor, as its owner said.</summary>
    public async Task AddressAsync(string address)
    {
        var house = Services.GetRequiredService<HouseKeeping>();
        Assert.True(await house.ChangeAsync(await house.SiteAsync(Stop) with { Address = address }, Stop));
    }

    /// <summary>Logged elsewhere, by the owner; whatever can be waved through is.</summary>
    public async Task LogAsync(params LogEntry[] entries)
    {
        foreach (var entry in entries)
        {
            var sent = entry.Id == default ? entry with { Id = Guid.CreateVersion7() } : entry;
            var judged = await Log.CheckAsync(new([new Sent(sent, Answer.None)], _people[Owner]), Stop);
            var codes = judged.Judged.SelectMany(j => j.Verdict.Objections).Select(o => o.Code);
            Answer answer = new("as it is here", [.. codes], AlreadyHappened: true);
            var appended = await Log.AppendAsync(new([new Sent(sent, answer)], _people[Owner]), Stop);
            Assert.True(appended is Appended.Stored, $"{EntryKinds.NameOf(entry)}: {string.Join(", ", codes)}");
        }
    }

    /// <summary>A program that may read and log.</summary>
    public async Task<HttpClient> ProgramAsync()
    {
        var made = await Services
            .GetRequiredService<Tokens>()
            .AddAsync($"Gauge {Guid.CreateVersion7():N}", ["read", "log"], by: null, Now, Stop);
        return new()
        {
            BaseAddress = new(Address),
            DefaultRequestHeaders = { Authorization = new("Bearer", made!.Value.Secret) },
        };
    }

    public async Task<TankState> StateOfAsync(Tank tank) =>
        (await Reader.TankAsync(tank.Code, Stop))!.Floor.Tanks[0].State;

    public async Task<int> EntriesOnAsync(Tank tank) =>
        (
            await Services
                .GetRequiredService<LogReader>()
                .TimelineAsync(Subject.Tank(tank.Id), after: null, limit: 200, Stop)
        )
            .Items
            .Count;

    private static (string Name, Role Role)[] Roles =>
        [(Owner, Role.Owner), (Brewer, Role.Brewer), (Helper, Role.Helper), (Viewer, Role.Viewer)];

    // Once a person, as everybody does it; later visits come with the cookie.
    private async Task<string> SignedInAsync(string name)
    {
        await _door.WaitAsync(Stop);
        try
        {
            if (!_signedIn.TryGetValue(name, out var state))
            {
                await using var visit = await StrangerAsync(Screen.Phone);
                await visit.SignInAsync(name);
                _signedIn[name] = state = await visit.StorageAsync();
            }

            return state;
        }
        finally
        {
            _door.Release();
        }
    }
}
