using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using BrewFloor.Benchmarks.Drills;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>The real nginx with the recipe of <c>deploy/nginx.conf</c>: only ports, certificate and what is behind it are this test's.</summary>
public sealed class Nginx : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("brewfloor-nginx-");
    private readonly Process _process;

    private Nginx(string recipe, int port, IEnumerable<string> behind)
    {
        Address = $"https://127.0.0.1:{port}";
        var servers = string.Join('\n', behind.Select(address => $"server {new Uri(address).Authority};"));
        var site = recipe
            .Replace("server 127.0.0.1:8080;", servers, StringComparison.Ordinal)
            .Replace("listen 443 ssl", $"listen 127.0.0.1:{port} ssl", StringComparison.Ordinal)
            .Replace("/etc/ssl/", $"{_folder.FullName}/", StringComparison.Ordinal);
        Certify();
        File.WriteAllText($"{_folder.FullName}/site.conf", site);
        File.WriteAllText(
            $"{_folder.FullName}/nginx.conf",
            $$"""
            daemon off; pid {{_folder.FullName}}/pid; error_log {{_folder.FullName}}/error.log;
            events { }
            http {
                log_format served '$upstream_addr';
                access_log {{_folder.FullName}}/served.log served;
                client_body_temp_path {{_folder.FullName}}/body; proxy_temp_path {{_folder.FullName}}/proxy;
                fastcgi_temp_path {{_folder.FullName}}/fastcgi; uwsgi_temp_path {{_folder.FullName}}/uwsgi;
                scgi_temp_path {{_folder.FullName}}/scgi;
                include {{_folder.FullName}}/site.conf;
            }
            """
        );
        _process = Process.Start(
            new ProcessStartInfo(Program, ["-c", $"{_folder.FullName}/nginx.conf", "-p", _folder.FullName])
            {
                RedirectStandardError = true,
                UseShellExecute = false,
            }
        )!;
    }

    public string Address { get; }

    // Debian keeps it where only root looks.
    private static string Program => File.Exists("/usr/sbin/nginx") ? "/usr/sbin/nginx" : "nginx";

    public static Task<Nginx> BeforeAsync(CancellationToken stop, params IEnumerable<string> behind) =>
        BelowAsync("", stop, behind);

    /// <summary>As the documents say for a floor that stands below a path; nothing answers beside it.</summary>
    public static async Task<Nginx> BelowAsync(string path, CancellationToken stop, params IEnumerable<string> behind)
    {
        var recipe = await File.ReadAllTextAsync(Path.Combine(PublishedApp.Root, "deploy/nginx.conf"), stop);
        var nginx = new Nginx(
            recipe.Replace("location /", $"location {path}/", StringComparison.Ordinal),
            AppProcess.FreePort(),
            behind
        );
        while (!await nginx.AnswersAsync(stop))
        {
            Assert.False(nginx._process.HasExited, $"nginx has ended: {nginx.LastWords()}");
            await Task.Delay(TimeSpan.FromMilliseconds(20), stop);
        }

        return nginx;
    }

    /// <summary>Which instances were asked, each once.</summary>
    public async Task<IReadOnlyList<string>> AskedAsync() =>
        [.. (await File.ReadAllLinesAsync($"{_folder.FullName}/served.log")).Distinct(StringComparer.Ordinal)];

    public async ValueTask DisposeAsync()
    {
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        _folder.Delete(recursive: true);
    }

    private void Certify()
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest(
            "CN=floor.example",
            key,
            HashAlgorithmName.SHA256,
            RSASignaturePadding.Pkcs1
        );
        var now = DateTimeOffset.UnixEpoch.AddYears(50);
        using var certificate = request.CreateSelfSigned(now, now.AddYears(50));
        File.WriteAllText($"{_folder.FullName}/floor.pem", certificate.ExportCertificatePem());
        File.WriteAllText($"{_folder.FullName}/floor.key", key.ExportPkcs8PrivateKeyPem());
    }

    private async Task<bool> AnswersAsync(CancellationToken stop)
    {
        using var socket = new TcpClient();
        try
        {
            await socket.ConnectAsync(IPAddress.Loopback, new Uri(Address).Port, stop);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private string LastWords()
    {
        var log = $"{_folder.FullName}/error.log";
        return _process.StandardError.ReadToEnd() + (File.Exists(log) ? File.ReadAllText(log) : "");
    }
}
