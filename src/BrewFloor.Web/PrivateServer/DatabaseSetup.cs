using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.PrivateServer;

internal static class DatabaseSetup
{
    /// <summary>The given database, or a private one in the data folder (<c>BREWFLOOR_DATA</c>).</summary>
    /// <exception cref="PrivateServerProblem">The connection strings cannot be read.</exception>
    public static IServiceCollection AddDatabase(this IServiceCollection services, IConfiguration configuration)
    {
        var address = AddressIn(configuration, configuration["BREWFLOOR_DATA"]);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton(address);
        services.AddSingleton<FloorDatabase>();
        services.AddHostedService<DatabaseLoop>();
        return services;
    }

    /// <param name="folder">For the private server.</param>
    /// <exception cref="StartProblemException">A file with a connection string cannot be read.</exception>
    /// <exception cref="PrivateServerProblem">The connection strings cannot be read.</exception>
    public static DatabaseAddress AddressIn(IConfiguration configuration, string? folder) =>
        DatabaseAddress.Of(
            SecretFile.Of("ConnectionStrings__BrewFloor", name => Said(configuration, name)),
            SecretFile.Of("ConnectionStrings__BrewFloorOwner", name => Said(configuration, name)),
            PrivateServerOptions.FromEnvironment(folder)
        );

    private static string? Said(IConfiguration configuration, string variable) =>
        configuration[variable.Replace("__", ConfigurationPath.KeyDelimiter, StringComparison.Ordinal)];
}
