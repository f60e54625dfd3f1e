using BrewFloor.Store.House;

namespace BrewFloor.Web.Shell;

public static class ShellSetup
{
    public static IServiceCollection AddShell(this IServiceCollection services) =>
        services
            .AddHttpContextAccessor()
            .AddScoped(provider =>
                provider.GetRequiredService<IHttpContextAccessor>().HttpContext is { } http
                    ? Reader.Of(
                        http.User,
                        Languages.For(http),
                        provider.GetRequiredService<RulesOnHand>().Zone,
                        provider.GetRequiredService<TimeProvider>().GetUtcNow()
                    )
                    : Reader.Stranger
            );
}
