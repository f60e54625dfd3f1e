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
                        LanguageFor(http.Request),
                        provider.GetRequiredService<RulesOnHand>().Zone,
                        provider.GetRequiredService<TimeProvider>().GetUtcNow()
                    )
                    : Reader.Stranger
            );

    // Programs compare words: theirs don't change with who set up the machine they run on.
    private static Language LanguageFor(HttpRequest request) =>
        request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
            ? Languages.English
            : Languages.AskedBy(request);
}
