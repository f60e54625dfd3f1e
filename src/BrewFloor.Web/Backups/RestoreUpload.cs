using System.Text;
using BrewFloor.Store.Backups;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;

namespace BrewFloor.Web.Backups;

/// <summary>A backup comes up from a browser while nobody owns the floor yet: straight to the disk, and restored from there.</summary>
/// <remarks>
/// The code from the console comes first in the form: without it nothing of the file is read. It is a secret that no
/// other site knows, so it also stands for the mark of our own form that other forms carry.
/// </remarks>
internal static class RestoreUpload
{
    public const string Address = "/setup/restore/upload";

    private const int LongestField = 1000;

    public static void MapRestoreUpload(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Address, ReceiveAsync).AllowAnonymous().DisableAntiforgery();

    private static async Task<IResult> ReceiveAsync(
        HttpContext http,
        FirstOwner first,
        SetupToken token,
        SealedRestore restore,
        DatabaseAddress database,
        StartOptions options,
        Readiness readiness,
        Restart restart
    )
    {
        if (await first.ExistsAsync(http.RequestAborted))
        {
            return Results.Redirect("~/setup");
        }

        var file = Path.Combine(options.DataFolder, $"upload-{Guid.CreateVersion7():N}.part");
        try
        {
            var passphrase = await ReadAsync(http, token, file);
            using var paused = readiness.Pause(); // no page and no sweep meanwhile
            await restore.RestoreUnderAppAsync(file, passphrase, CancellationToken.None); // to its end, whoever waits for it
            await SecurityBook.WriteAsync(database, new(SecurityKind.Restored), CancellationToken.None);
        }
        catch (PrivateServerProblem e)
        {
            return Again(e.Code);
        }
        catch (UploadException e)
        {
            return Again(e.Message);
        }
        catch (IOException)
        {
            return Again("broke-off");
        }
        finally
        {
            File.Delete(file);
        }

        restart.AskSoon();
        return Results.Redirect("~/setup/restore?said=done");
    }

    private static IResult Again(string code) => Results.Redirect($"~/setup/restore?said={Uri.EscapeDataString(code)}");

    private static async Task<Passphrase> ReadAsync(HttpContext http, SetupToken token, string file)
    {
        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = null; // a club's backup is as large as it is
        }

        var boundary = MediaTypeHeaderValue.TryParse(http.Request.ContentType, out var type)
            ? HeaderUtilities.RemoveQuotes(type.Boundary).Value
            : null;
        if (string.IsNullOrEmpty(boundary))
        {
            throw new UploadException("nothing-sent");
        }

        var parts = new MultipartReader(boundary, http.Request.Body);
        if (!token.Is(await FieldAsync(parts, "token", http.RequestAborted)))
        {
            throw new UploadException("wrong-code");
        }

        var passphrase = Passphrase.Of(await FieldAsync(parts, "passphrase", http.RequestAborted));
        var content = await NextAsync(parts, "file", http.RequestAborted);
        await using var to = OwnersFile.Create(file);
        await content.CopyToAsync(to, http.RequestAborted);
        return passphrase;
    }

    private static async Task<string> FieldAsync(MultipartReader parts, string name, CancellationToken stop)
    {
        var content = await NextAsync(parts, name, stop);
        var bytes = new byte[LongestField];
        var length = await content.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, stop);
        return Encoding.UTF8.GetString(bytes, 0, length);
    }

    // In the order of the form: the file is the last, and nothing of it is kept in memory.
    private static async Task<Stream> NextAsync(MultipartReader parts, string name, CancellationToken stop) =>
        await parts.ReadNextSectionAsync(stop) is { } part
        && ContentDispositionHeaderValue.TryParse(part.ContentDisposition, out var said)
        && string.Equals(HeaderUtilities.RemoveQuotes(said.Name).Value, name, StringComparison.Ordinal)
            ? part.Body
            : throw new UploadException("nothing-sent");

    /// <summary>The message is the code of a sentence.</summary>
    private sealed class UploadException(string code) : Exception(code);
}
