using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Web.PrivateServer;

internal static class DatabaseSetup
{
    /// <summary>The given database, or a private one in the data folder (<c>BREWFLOOR_DATA</c>).</summary>
    /// <exception cref="PrivateServerProblem">The connection strings cannot be read.</exception>
    public static IServiceCollection AddDatabase(this IServiceCollection services, IConfiguration configuration)
    {
        var address = DatabaseAddress.Of(
            configuration.GetConnectionString("BrewFloor"),
            configuration.GetConnectionString("BrewFloorOwner"),
            PrivateServerOptions.FromEnvironment(configuration["BREWFLOOR_DATA"])
        );
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton(address);
        services.AddSingleton<FloorDatabase>();
        services.AddHostedService<DatabaseLoop>();
        return services;
    }
}
