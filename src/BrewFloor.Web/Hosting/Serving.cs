using System.Net;
using BrewFloor.Store;
using BrewFloor.Web.Account;
using BrewFloor.Web.Api;
using BrewFloor.Web.Backups;
using BrewFloor.Web.Doctor;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Live;
using BrewFloor.Web.PrivateServer;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Spreadsheets;
using BrewFloor.Web.Tanks;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace BrewFloor.Web.Hosting;

/// <summary>The app while it serves pages: what it is made of, and in which order a request passes through it.</summary>
public static class Serving
{
    private static readonly string[] Packed = ["text/html", "text/css", "text/javascript", "image/svg+xml"];

    private const long LargestBody = 1024 * 1024;

    public static async Task<int> RunAsync(StartOptions options, string[] args)
    {
        bool again;
        do
        {
            await using var app = Build(options, args);
            app.Lifetime.ApplicationStarted.Register(() => Greeting.Say(options, app.Urls));
            var restart = app.Services.GetRequiredService<Restart>();
            await app.RunAsync();
            again = restart.IsAsked;
        } while (again);

        return 0;
    }

    /// <summary>The whole app, not yet started.</summary>
    /// <param name="also">What is measured or tried beside it.</param>
    public static WebApplication Build(StartOptions options, string[] args, Action<IServiceCollection>? also = null)
    {
        var builder = WebApplication.CreateBuilder(args);
        Listen(builder, options);
        AddFloor(builder, options);
        also?.Invoke(builder.Services);
        var app = builder.Build();
        UseFloor(app);
        return app;
    }

    private static void Listen(WebApplicationBuilder builder, StartOptions options) =>
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestBody;
            if (options.IsOnLan)
            {
                kestrel.ListenAnyIP(options.Port);
            }
            else
            {
                ListenHere(kestrel, options.Port);
            }
        });

    // "localhost" is two addresses, and a free port of the one may be taken on the other.
    private static void ListenHere(KestrelServerOptions kestrel, int port)
    {
        if (port is 0)
        {
            kestrel.Listen(IPAddress.Loopback, 0); // any free one
        }
        else
        {
            kestrel.ListenLocalhost(port);
        }
    }

    private static void AddFloor(WebApplicationBuilder builder, StartOptions options)
    {
        builder.Services.AddProcessLog(options);
        builder.Services.AddSingleton(options);
        builder.Configuration["BREWFLOOR_DATA"] = options.DataFolder;
        builder.Services.AddDatabase(builder.Configuration);
        builder.Services.AddFloorStore(services => services.GetRequiredService<Readiness>().Connection);
        builder.Services.AddSingleton<Readiness>().AddHostedService<FirstMigration>();
        builder.Services.AddKeys(options);
        var trusted = TrustedProxies.Parse(builder.Configuration[TrustedProxies.Variable]);
        builder.Services.Configure<ForwardedHeadersOptions>(forwarded => TrustedProxies.Configure(forwarded, trusted));
        builder.Services.AddAccounts();
        builder.Services.AddSingleton(TokenPace.Read(builder.Configuration[TokenPace.Variable]));
        builder.Services.AddSingleton(SecurityKept.Read(builder.Configuration[SecurityKept.Variable]));
        builder.Services.AddHostedService<SecurityKeeping>();
        builder.Services.AddShell();
        builder.Services.AddFloorPages();
        builder.Services.AddImport();
        builder.Services.AddBackups(builder.Configuration);
        builder.Services.AddDoctor();
        builder.Services.AddFloorApi();
        builder.Services.AddMetrics();
        builder.Services.AddRazorComponents();
        // Not what streams: news must not wait for more of them.
        builder.Services.AddResponseCompression(packed => packed.MimeTypes = Packed);
        builder.Services.ReadKeysWhenNeeded();
    }

    private static void UseFloor(WebApplication app)
    {
        app.UseBasePath(BasePath.Parse(app.Configuration[BasePath.Variable]));
        app.UseProxySeen();
        app.UseForwardedHeaders();
        app.UseResponseCompression();
        app.UseSecurityHeaders();
        app.UseExceptionHandler("/error", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/not-found");
        app.UseLookedAt();
        app.UseApiProblems();
        app.UseNoCrossSite();
        app.UseLargestForm(LargestBody, butFor: RestoreUpload.Address, ImportSetup.Upload);
        app.UsePaces();
        app.UseFloorAway();
        app.UseRouting();
        app.UseAuthentication();
        app.UseFirstSteps();
        app.UseAuthorization();
        app.UseAntiforgery();
        app.MapStaticAssets().AllowAnonymous();
        app.MapHealth();
        app.MapMetrics();
        app.MapThemes();
        app.MapSignOut();
        app.MapRestoreUpload();
        app.MapPasskeys();
        app.MapInvites();
        app.MapLive();
        app.MapJobs();
        app.MapFind();
        app.MapTemplates();
        app.MapFloorApi();
        app.MapRazorComponents<App>();
    }
}
