using BrewFloor.Web.Jobs;
using BrewFloor.Web.Live;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>What the pages of the floor are made of.</summary>
public static class FloorSetup
{
    public static IServiceCollection AddFloorPages(this IServiceCollection services) =>
        services
            .AddScoped<FormFloors>()
            .AddScoped<BrewersYes>()
            .AddScoped<ShownJobs>()
            .AddScoped<TimelineLines>()
            .AddSingleton<FloorNews>()
            .AddHostedService(provider => provider.GetRequiredService<FloorNews>())
            .AddHostedService<Sweeps>();
}
