using System.Globalization;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tanks;
using UnitsNet;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>A data folder that nobody minds losing: a private database with some tanks in it, and a token to log with.</summary>
internal sealed class DrillFloor : IDisposable
{
    public static readonly Author Owner = new(Guid.Parse("018f0000-0000-7000-8000-0000000000d1"), Role.Owner);

    private DrillFloor(string folder) => Folder = folder;

    public string Folder { get; }

    public string Token { get; private set; } = "";

    public IReadOnlyList<string> Codes { get; } =
    [.. Enumerable.Range(1, 8).Select(n => string.Create(CultureInfo.InvariantCulture, $"K{n}"))];

    /// <param name="under">A short path that every user may pass through.</param>
    public static async Task<DrillFloor> MakeAsync(string under, CancellationToken stop)
    {
        var floor = new DrillFloor(
            Directory.CreateDirectory($"{under}/brewfloor-drill-{Guid.CreateVersion7():N}").FullName
        );
        await using var database = await floor.BorrowAsync(stop);
        await Migrator.MigrateAsync(database.Connections.Owner, "Europe/Berlin", stop);
        await using var services = Services(database);
        foreach (var code in floor.Codes)
        {
            await services.GetRequiredService<Inventory>().AddAsync(ATank(code), Owner, stop);
        }

        var tokens = services.GetRequiredService<Tokens>();
        var now = TimeProvider.System.GetUtcNow();
        (_, floor.Token) = (await tokens.AddAsync("drill", ["read", "log"], by: null, now, stop))!.Value;
        return floor;
    }

    public HttpClient Http(int port) => Http(port, Line(), TimeSpan.FromSeconds(10));

    /// <summary>Whoever waits before the gate is not in a hurry.</summary>
    public HttpClient Http(int port, Gate gate) => Http(port, gate, Timeout.InfiniteTimeSpan);

    public static SocketsHttpHandler Line() =>
        new() { ConnectTimeout = TimeSpan.FromSeconds(2), MaxConnectionsPerServer = 64 };

    private HttpClient Http(int port, HttpMessageHandler line, TimeSpan patience)
    {
        var http = new HttpClient(line)
        {
            BaseAddress = new($"http://127.0.0.1:{port.ToString(CultureInfo.InvariantCulture)}"),
            Timeout = patience,
        };
        http.DefaultRequestHeaders.Authorization = new("Bearer", Token);
        return http;
    }

    /// <summary>The database, with the app running or without.</summary>
    public Task<BorrowedDatabase> BorrowAsync(CancellationToken stop) =>
        BorrowedDatabase.FromAsync(new DatabaseAddress.InFolder(PrivateServerOptions.FromEnvironment(Folder)), stop);

    public static ServiceProvider Services(BorrowedDatabase database) =>
        new ServiceCollection()
            .AddSingleton(TimeProvider.System)
            .AddFloorStore(_ => database.Connections.Application)
            .BuildServiceProvider();

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static Tank ATank(string code) =>
        new(Guid.CreateVersion7(), code)
        {
            Type = TankType.PlasticConical,
            Material = Material.Plastic,
            HighestCleaning = Temperature.FromDegreesCelsius(60),
            Strapping = DipTable
                .Measured([new(Length.Zero, Volume.Zero), new(Length.FromMillimeters(1500), Volume.FromLiters(200))])
                .Value,
            Working = Volume.FromLiters(160),
        };
}
