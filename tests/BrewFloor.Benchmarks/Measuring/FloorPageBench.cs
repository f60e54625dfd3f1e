using BrewFloor.Benchmarks.Drills;
using BrewFloor.Store.House;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Npgsql;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>
/// The floor page over HTTP, against an endpoint of the same process that checks the same cookie, sends the same questions and
/// reads every row of the answers, and writes as many bytes.
/// </summary>
internal sealed class FloorPageBench : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly Visitor _visitor;
    private readonly string _keys;
    private int _bytes;

    private FloorPageBench(WebApplication app, Visitor visitor, string keys) =>
        (_app, _visitor, _keys) = (app, visitor, keys);

    /// <summary>How many bytes the page has.</summary>
    public int Bytes => _bytes;

    public static async Task<FloorPageBench> StartAsync(LoadedFloor floor)
    {
        var folder = Directory.CreateDirectory($"/tmp/brewfloor-bench-{Guid.CreateVersion7():N}").FullName;
        var port = AppProcess.FreePort();
        string[] args =
        [
            $"--ConnectionStrings:BrewFloor={floor.Connections.Application}",
            $"--ConnectionStrings:BrewFloorOwner={floor.Connections.Owner}",
            "--applicationName=BrewFloor.Web",
            $"--contentRoot={Path.Combine(PublishedApp.Root, "src", "BrewFloor.Web")}",
            "--environment=Production",
        ];
        var app = Serving.Build(
            new StartOptions("serve", [], folder, port),
            args,
            services => services.AddSingleton<IStartupFilter, BareEndpoint>()
        );
        await app.StartAsync();
        var readiness = app.Services.GetRequiredService<Readiness>();
        while (!readiness.IsReady)
        {
            await Task.Delay(20);
        }

        var bench = new FloorPageBench(app, new(port), folder);
        await bench._visitor.SignInAsync(LoadedFloor.OwnerName, LoadedFloor.Password);
        bench._bytes = await bench._visitor.ReadAsync("/");
        return bench;
    }

    /// <summary>Ours.</summary>
    public async Task PageAsync() => _bytes = await _visitor.ReadAsync("/");

    /// <summary>The bare way.</summary>
    public Task BareAsync() => _visitor.ReadAsync($"{BareEndpoint.Path}?bytes={_bytes}");

    public async ValueTask DisposeAsync()
    {
        _visitor.Dispose();
        await _app.StopAsync();
        await _app.DisposeAsync();
        Directory.Delete(_keys, recursive: true);
    }

    private sealed class BareEndpoint(IServiceProvider services) : IStartupFilter
    {
        public const string Path = "/bare";

        private byte[] _page = [];

        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) =>
            app =>
            {
                app.Map(Path, bare => bare.Run(AnswerAsync));
                next(app);
            };

        private async Task AnswerAsync(HttpContext http)
        {
            var signedIn = await http.AuthenticateAsync(CookieAuthenticationDefaults.AuthenticationScheme);
            if (!signedIn.Succeeded)
            {
                http.Response.StatusCode = StatusCodes.Status401Unauthorized;
                return;
            }

            var database = services.GetRequiredService<NpgsqlDataSource>();
            var reader = new FloorReader(database, services.GetRequiredService<RulesOnHand>());
            await ReadAllAsync(database, reader.AskFloor, http.RequestAborted);
            await ReadAllAsync(database, batch => batch.Add(LogReader.Names), http.RequestAborted);
            await ReadAllAsync(
                database,
                batch => batch.Add(DueJobs.Question, TimeProvider.System.GetUtcNow()),
                http.RequestAborted
            );

            var bytes = int.Parse(
                http.Request.Query["bytes"].ToString(),
                System.Globalization.CultureInfo.InvariantCulture
            );
            if (_page.Length != bytes)
            {
                _page = new byte[bytes];
                Array.Fill(_page, (byte)' ');
            }

            http.Response.ContentType = "text/html; charset=utf-8";
            await http.Response.Body.WriteAsync(_page, http.RequestAborted);
        }

        private static async Task ReadAllAsync(
            NpgsqlDataSource database,
            Action<NpgsqlBatch> ask,
            CancellationToken stop
        )
        {
            await using var connection = await database.OpenConnectionAsync(stop);
            await using var batch = connection.CreateBatch();
            ask(batch);
            await using var reader = await batch.ExecuteReaderAsync(stop);
            do
            {
                while (await reader.ReadAsync(stop))
                {
                    for (var column = 0; column < reader.FieldCount; column++)
                    {
                        _ = reader.GetValue(column);
                    }
                }
            } while (await reader.NextResultAsync(stop));
        }
    }
}
