using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using BrewFloor.Benchmarks.Drills;
using BrewFloor.Store.Backups;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.EndToEnd.Tests.Backups;

/// <summary>The old machine died: a backup goes up in the browser of the new one, and the floor is there again.</summary>
[Collection(nameof(Drills))]
public sealed partial class SetupRestoreTests : IAsyncLifetime
{
    private const string Words = "four kettles under snow";
    private const long AboveTheUsualLimit = 1024 * 1024;

    private DrillFloor _old = null!;
    private DirectoryInfo _new = null!;
    private byte[] _backup = [];
    private int _devices;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _old = await DrillFloor.MakeAsync(Scratch.Root, Stop);
        await File.WriteAllBytesAsync($"{_old.Folder}/photo.bin", new byte[AboveTheUsualLimit], Stop); // a file like any other
        await using (var database = await _old.BorrowAsync(Stop))
        {
            await using var services = DrillFloor.Services(database);
            var now = TimeProvider.System.GetUtcNow();
            await services
                .GetRequiredService<Accounts>()
                .AddAsync("Olga", DrillFloor.Owner.Role, "hash", false, now, Stop);
        }

        var file = $"{_old.Folder}.backup";
        var address = new DatabaseAddress.InFolder(PrivateServerOptions.FromEnvironment(_old.Folder));
        await new SealedBackup(address, _old.Folder).BackupAsync(file, Passphrase.Of(Words), Stop);
        _backup = await File.ReadAllBytesAsync(file, Stop);
        File.Delete(file);
        _new = Directory.CreateDirectory($"{Scratch.Root}/brewfloor-new-{Guid.CreateVersion7():N}");
    }

    public ValueTask DisposeAsync()
    {
        _old.Dispose();
        _new.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task A_backup_is_restored_on_the_first_page_by_whoever_reads_the_console()
    {
        Assert.True(_backup.Length > AboveTheUsualLimit);
        var port = AppProcess.FreePort();
        using var http = _old.Http(port); // with the old floor's token
        using var app = AppProcess.Start(await PublishedApp.FolderAsync(Stop), _new.FullName, port);
        await app.ReadyAsync(http, Stop);
        var code = await CodeAsync(app);

        Assert.EndsWith(
            "said=wrong-code",
            await SendAsync(http, "not the code", Words, _backup),
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            "said=wrong-passphrase",
            await SendAsync(http, code, "rain", _backup),
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            "said=backup-cut-short",
            await SendAsync(http, code, Words, _backup[..^9]),
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            "said=not-a-backup",
            await SendAsync(http, code, Words, new byte[99]),
            StringComparison.Ordinal
        );
        Assert.EndsWith("said=nothing-sent", await SendAsync(http, code, Words, file: null), StringComparison.Ordinal);
        Assert.Empty(_new.GetFiles("upload-*"));
        Assert.Equal(HttpStatusCode.Unauthorized, (await http.GetAsync(Of("/api/v1/tanks"), Stop)).StatusCode);

        Assert.EndsWith("said=done", await SendAsync(http, code, Words, _backup), StringComparison.Ordinal);

        await BackAsync(app, http);
        var tanks = await http.GetStringAsync(Of("/api/v1/tanks"), Stop);
        Assert.All(_old.Codes, tank => Assert.Contains($"\"{tank}\"", tanks, StringComparison.Ordinal));
        Assert.Equal("/setup", await SendAsync(http, code, Words, _backup)); // it has an owner now
        Assert.True(File.Exists($"{_new.FullName}/photo.bin"));
        Assert.Empty(_new.GetFiles("upload-*"));
        await app.StopAsync(Stop);
    }

    // It greets each time it begins.
    private async Task BackAsync(AppProcess app, HttpClient http)
    {
        while (Greeting().Count(Log()) < 2 || !await AppProcess.IsReadyAsync(http, Stop))
        {
            Assert.True(app.IsRunning, app.LastWords());
            await Task.Delay(50, Stop);
        }
    }

    private async Task<string> CodeAsync(AppProcess app)
    {
        while (true)
        {
            if (Code().Match(Log()) is { Success: true } code)
            {
                return code.Groups["code"].Value;
            }

            Assert.True(app.IsRunning, app.LastWords());
            await Task.Delay(50, Stop);
        }
    }

    private string Log()
    {
        using var log = new FileStream($"{_new.FullName}/app.log", FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return new StreamReader(log).ReadToEnd();
    }

    /// <returns>Where it leads.</returns>
    private async Task<string> SendAsync(HttpClient http, string code, string passphrase, byte[]? file)
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent(code), "token" },
            { new StringContent(passphrase), "passphrase" },
        };
        if (file is not null)
        {
            var content = new ByteArrayContent(file);
            content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
            form.Add(content, "file", "club.backup");
        }

        using var request = new HttpRequestMessage(HttpMethod.Post, Of("/setup/restore/upload")) { Content = form };
        request.Headers.Add("X-Forwarded-For", $"10.0.0.{++_devices}"); // from one device five tries a minute are looked at
        using var answer = await http.SendAsync(request, Stop);
        return answer.RequestMessage!.RequestUri!.PathAndQuery; // followed by the client
    }

    private static Uri Of(string path) => new(path, UriKind.Relative);

    [GeneratedRegex("^    (?<code>[0-9a-f]{32})\r?$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Code();

    [GeneratedRegex("^BrewFloor runs on ", RegexOptions.Multiline, 1000)]
    private static partial Regex Greeting();
}
