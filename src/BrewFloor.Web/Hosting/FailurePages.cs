using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Features;

namespace BrewFloor.Web.Hosting;

/// <summary>The pages that are shown in place of what failed.</summary>
internal static class FailurePages
{
    private const long MostHeardOut = 16 * 1024 * 1024;

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
    /// <param name="largest">In bytes.</param>
    /// <param name="butFor">Where a file of any size is taken.</param>
    /// <param name="files">Where a form with a file is taken, and how large.</param>
    public static IApplicationBuilder UseLargestForm(
        this IApplicationBuilder app,
        long largest,
        string butFor,
        (string Address, long Largest) files
    ) =>
        app.Use(
            async (context, next) =>
            {
                var most = largest;
                if (HttpMethods.IsPost(context.Request.Method) && context.Request.Path == files.Address)
                {
                    most = files.Largest;
                    Take(context, most);
                }

                if (
                    !HttpMethods.IsPost(context.Request.Method)
                    || context.Request.ContentLength is not { } length
                    || length <= most
                    || context.Request.Path == butFor
                )
                {
                    await next(context);
                    return;
                }

                await HearOutAsync(context, length);
                context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
            }
        );

    // Who is cut off while sending sees a broken line instead of the answer: what is not much too large is let come to its end.
    private static async Task HearOutAsync(HttpContext context, long length)
    {
        if (length <= MostHeardOut && Take(context, MostHeardOut))
        {
            await context.Request.Body.CopyToAsync(Stream.Null, context.RequestAborted);
        }
    }

    private static bool Take(HttpContext context, long most)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is not { IsReadOnly: false } limit)
        {
            return false;
        }

        limit.MaxRequestBodySize = most;
        return true;
    }
}
