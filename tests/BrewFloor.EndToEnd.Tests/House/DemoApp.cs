using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;
using Npgsql;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>The demo as somebody sees it who starts it on one certain morning: the same tanks, beer and jobs in every run.</summary>
public sealed class DemoApp(TestServer server, Chromium chromium) : IAsyncLifetime
{
    // A Friday morning, before any test was run.
    private static readonly DateTimeOffset Morning = new(2026, 11, 20, 9, 10, 0, TimeSpan.Zero);

    // The floor's time is the database's: its clock is found here before the real one.
    private static readonly string Clock = $"""
        CREATE SCHEMA stopped;
        CREATE FUNCTION stopped.clock_timestamp() RETURNS timestamptz LANGUAGE sql VOLATILE
            AS $$ SELECT timestamptz '{Morning:yyyy-MM-dd HH:mm:ss}+00' $$;
        GRANT USAGE ON SCHEMA stopped TO PUBLIC;
        """;

    private readonly string _data = Directory.CreateTempSubdirectory("brewfloor-demo-").FullName;
    private WebApplication _app = null!;
    private string _name = "";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Address => _app.Urls.First();

    public async ValueTask InitializeAsync()
    {
        var connections = await server.NewDatabaseAsync(Stop);
        await using (var source = NpgsqlDataSource.Create(connections.Owner))
        await using (var command = source.CreateCommand(Clock))
        {
            await command.ExecuteNonQueryAsync(Stop);
        }

        _app = Serving.Build(
            new StartOptions("serve", [], _data, Port: 0) { IsDemo = true },
            [
                "--environment=Development",
                "--applicationName=BrewFloor.Web",
                $"--ConnectionStrings:BrewFloor={WithStoppedClock(connections.Application)}",
                $"--ConnectionStrings:BrewFloorOwner={connections.Owner}",
            ],
            services => services.AddSingleton<TimeProvider>(new StoppedClock())
        );
        await _app.StartAsync(Stop);
        await _app
            .Services.GetServices<IHostedService>()
            .OfType<FirstMigration>()
            .Single()
            .ExecuteTask!.WaitAsync(Stop);
        await LetInAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync(CancellationToken.None);
        await _app.DisposeAsync();
        Directory.Delete(_data, recursive: true);
    }

    /// <summary>A brewer of the demo, signed in, in a browser that has seen nothing of it yet.</summary>
    public async Task<Visit> VisitAsync(Screen screen)
    {
        string state;
        await using (
            var door = await Visit.BeginAsync(await chromium.NewContextAsync(screen.Options(Address)), screen, Address)
        )
        {
            await door.SignInAsync(_name);
            state = await door.StorageAsync();
        }

        var options = screen.Options(Address);
        options.StorageState = state;
        return await Visit.BeginAsync(await chromium.NewContextAsync(options), screen, Address);
    }

    // The demo's passwords are made anew each time, and only printed.
    private async Task LetInAsync()
    {
        var accounts = _app.Services.GetRequiredService<Accounts>();
        var brewer = (await accounts.AllAsync(Stop)).First(person => person.Role is Role.Brewer);
        await accounts.SetPasswordAsync(brewer.Id, new Passwords().Hash(FloorApp.Password), mustChange: false, Stop);
        _name = brewer.Name;
    }

    private static string WithStoppedClock(string connection) =>
        new NpgsqlConnectionStringBuilder(connection) { SearchPath = "stopped,pg_catalog,public" }.ConnectionString;

    private sealed class StoppedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Morning;
    }
}
