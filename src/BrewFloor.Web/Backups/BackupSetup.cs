using BrewFloor.Store.Backups;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Backups;

public static class BackupSetup
{
    /// <summary>The nightly backup, when a folder for it is named.</summary>
    /// <exception cref="StartProblemException">A setting of it is wrong.</exception>
    public static IServiceCollection AddBackups(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddSingleton(provider => new BackupRound(
            provider.GetRequiredService<DatabaseAddress>(),
            provider.GetRequiredService<StartOptions>().DataFolder,
            provider.GetRequiredService<TimeProvider>()
        ));
        services.AddSingleton<Restart>();
        services.AddSingleton(provider => new SealedRestore(
            provider.GetRequiredService<DatabaseAddress>(),
            provider.GetRequiredService<StartOptions>().DataFolder
        ));
        if (BackupSettings.Read(name => configuration[name]) is { } settings)
        {
            services.AddSingleton(settings).AddSingleton<NightlyBackup>().AddHostedService<NightlyBackups>();
        }

        return services;
    }
}
