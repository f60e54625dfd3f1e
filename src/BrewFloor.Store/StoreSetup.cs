using BrewFloor.Store.Backups;
using BrewFloor.Store.Batches;
using BrewFloor.Store.House;
using BrewFloor.Store.Items;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Yeast;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace BrewFloor.Store;

public static class StoreSetup
{
    /// <summary>The way in, the ways to read, and the keepers of things, people and jobs.</summary>
    /// <param name="connection">The way in for the app; asked for when the first of them is used.</param>
    public static IServiceCollection AddFloorStore(
        this IServiceCollection services,
        Func<IServiceProvider, string> connection
    ) =>
        services
            .AddSingleton(provider =>
                Watched(DataSource(StatementLimit.Within(connection(provider))), provider.GetService<FloorDatabase>())
            )
            .AddDbContextFactory<FloorDb>(
                (provider, options) => Options(options, provider.GetRequiredService<NpgsqlDataSource>())
            )
            .AddSingleton<RulesOnHand>()
            .AddSingleton<FloorLog>()
            .AddSingleton<FloorReader>()
            .AddSingleton<LogReader>()
            .AddSingleton<SubjectNames>()
            .AddSingleton<JobKeeper>()
            .AddSingleton<Inventory>()
            .AddSingleton<BatchBook>()
            .AddSingleton<CultureBook>()
            .AddSingleton<ItemBook>()
            .AddSingleton<HouseKeeping>()
            .AddSingleton<Cautions>()
            .AddSingleton<DueJobs>()
            .AddSingleton<Accounts>()
            .AddSingleton<FirstOwner>()
            .AddSingleton<Tokens>()
            .AddSingleton<BackupBook>()
            .AddSingleton<Sessions>()
            .AddSingleton<Invites>()
            .AddSingleton<Passkeys>()
            .AddSingleton<SecurityBook>()
            .AddSingleton<SpreadsheetBook>()
            .AddSingleton<SpreadsheetImport>()
            .AddSingleton<SpreadsheetUndo>();

    /// <summary>A pool whose statements are prepared once and then reused.</summary>
    public static NpgsqlDataSource DataSource(string connection) =>
        NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(connection)
            {
                MaxAutoPrepare = 60,
                AutoPrepareMinUsages = 3,
            }.ConnectionString
        );

    // In an app that goes on through a restart of its server, the first requests after it would each find a dead connection.
    private static NpgsqlDataSource Watched(NpgsqlDataSource pool, FloorDatabase? server)
    {
        server?.WhenBack(pool.Clear);
        return pool;
    }

    public static DbContextOptionsBuilder Options(DbContextOptionsBuilder options, NpgsqlDataSource database) =>
        options.UseNpgsql(database).UseSnakeCaseNamingConvention();
}
