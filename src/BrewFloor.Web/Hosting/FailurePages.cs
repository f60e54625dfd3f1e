using Microsoft.AspNetCore.Diagnostics;

namespace BrewFloor.Web.Hosting;

/// <summary>The pages that are shown in place of what failed.</summary>
internal static class FailurePages
{
    /// <summary>Such a page is looked at, whatever was being sent: a form that was refused isn't read once more for it.</summary>
    public static IApplicationBuilder UseLookedAt(this IApplicationBuilder app) =>
        app.Use(
            static (context, next) =>
            {
                if (
                    context.Features.Get<IStatusCodeReExecuteFeature>() is not null
                    || context.Features.Get<IExceptionHandlerFeature>() is not null
                )
                {
                    context.Request.Method = HttpMethods.Get;
                }

                return next(context);
            }
        );

    /// <summary>A form larger than the server takes is answered before anybody tries to read it.</summary>
    public static IApplicationBuilder UseLargestForm(this IApplicationBuilder app, long largest) =>
        app.Use(
            (context, next) =>
            {
                if (
                    !HttpMethods.IsPost(context.Request.Method)
                    || context.Request.ContentLength is not { } length
                    || length <= largest
                )
                {
                    return next(context);
                }

                context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
                return Task.CompletedTask;
            }
        );
}
