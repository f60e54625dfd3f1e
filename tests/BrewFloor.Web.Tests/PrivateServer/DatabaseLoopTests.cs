using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.PrivateServer;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace BrewFloor.Web.Tests.PrivateServer;

public sealed class DatabaseLoopTests : IDisposable
{
    private readonly string _folder = Directory
        .CreateDirectory($"{Scratch.Root}/bf-{Guid.CreateVersion7():N}")
        .FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task The_private_database_is_up_before_the_app_is_and_down_after_it()
    {
        using var app = Build(_folder);

        await app.StartAsync(Stop);
        Assert.True(app.Services.GetRequiredService<FloorDatabase>().IsReachable);
        Assert.True(File.Exists($"{_folder}/pgdata/postmaster.pid"));

        await app.StopAsync(Stop);
        Assert.False(File.Exists($"{_folder}/pgdata/postmaster.pid"));
    }

    [Fact]
    public async Task A_database_that_cannot_be_brought_up_stops_the_start_with_its_sentence()
    {
        using var app = Build("/proc/brewfloor");

        var problem = await Assert.ThrowsAsync<PrivateServerProblem>(() => app.StartAsync(Stop));

        Assert.Equal("folder-not-writable", problem.Code);
    }

    private static IHost Build(string folder)
    {
        var builder = Host.CreateEmptyApplicationBuilder(new());
        builder.Configuration["BREWFLOOR_DATA"] = folder;
        builder.Services.AddDatabase(builder.Configuration);
        return builder.Build();
    }
}
