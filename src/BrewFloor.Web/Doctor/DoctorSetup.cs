namespace BrewFloor.Web.Doctor;

public static class DoctorSetup
{
    public static IServiceCollection AddDoctor(this IServiceCollection services) =>
        services.AddSingleton<ProxySeen>().AddSingleton<Checkup>();

    /// <summary>Before anything takes a proxy's headers away.</summary>
    public static IApplicationBuilder UseProxySeen(this IApplicationBuilder app)
    {
        var seen = app.ApplicationServices.GetRequiredService<ProxySeen>();
        return app.Use(
            (context, next) =>
            {
                seen.Look(context.Request);
                return next(context);
            }
        );
    }
}
