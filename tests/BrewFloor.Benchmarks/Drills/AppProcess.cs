using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using BrewFloor.Web.Account;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>The published app as a process of its own.</summary>
internal sealed class AppProcess : IDisposable
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(10);
    private static readonly TimeSpan LongestStart = TimeSpan.FromSeconds(60);

    private readonly Process _process;
    private readonly string _log;
    private readonly long _started = Stopwatch.GetTimestamp();

    private AppProcess(Process process, string log) => (_process, _log) = (process, log);

    public int Id => _process.Id;

    public bool IsRunning => !_process.HasExited;

    /// <summary>Starts it on a data folder; its words go to a file there.</summary>
    public static AppProcess Start(string published, string data, int port)
    {
        var log = Path.Combine(data, "app.log");
        var arguments = new[]
        {
            "-c",
            """exec dotnet "$1/BrewFloor.Web.dll" serve --data "$2" --port "$3" >>"$4" 2>&1 </dev/null""",
            "sh",
            published,
            data,
            port.ToString(CultureInfo.InvariantCulture),
            log,
        };
        var start = new ProcessStartInfo("sh", arguments) { WorkingDirectory = published };
        start.Environment["ASPNETCORE_CONTENTROOT"] = published;
        start.Environment["ASPNETCORE_ENVIRONMENT"] = "Production";
        start.Environment[TokenPace.Variable] = "1000000"; // its writers are to load it: their pace is not in question
        start.Environment.Remove("ConnectionStrings__BrewFloor");
        return new(Process.Start(start)!, log);
    }

    /// <summary>A port that nobody had a moment ago.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>How long after its start it said that it is ready.</summary>
    public async Task<TimeSpan> ReadyAsync(HttpClient http, CancellationToken stop)
    {
        while (!await IsReadyAsync(http, stop))
        {
            if (!IsRunning || Stopwatch.GetElapsedTime(_started) > LongestStart)
            {
                throw new InvalidOperationException($"The app did not start. Its last words:\n{LastWords()}");
            }

            await Task.Delay(BetweenLooks, stop);
        }

        return Stopwatch.GetElapsedTime(_started);
    }

    public static async Task<bool> IsReadyAsync(HttpClient http, CancellationToken stop)
    {
        try
        {
            using var answer = await http.GetAsync(new Uri("/health/ready", UriKind.Relative), stop);
            return answer.IsSuccessStatusCode;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException && !stop.IsCancellationRequested)
        {
            return false;
        }
    }

    /// <summary>SIGKILL: nothing of it gets to say goodbye.</summary>
    public async Task KillAsync(CancellationToken stop)
    {
        _process.Kill();
        await _process.WaitForExitAsync(stop);
    }

    /// <summary>SIGTERM, and its end.</summary>
    public Task StopAsync(CancellationToken stop) => StopAsync(_process, stop);

    /// <inheritdoc cref="StopAsync(CancellationToken)"/>
    /// <remarks>The shell's own kill: a bare machine has no program of that name.</remarks>
    public static async Task StopAsync(Process process, CancellationToken stop)
    {
        using var kill = Process.Start(
            "sh",
            ["-c", string.Create(CultureInfo.InvariantCulture, $"kill -TERM {process.Id}")]
        );
        await kill.WaitForExitAsync(stop);
        await process.WaitForExitAsync(stop);
    }

    public string LastWords() => File.Exists(_log) ? string.Join('\n', File.ReadLines(_log).TakeLast(20)) : "";

    public void Dispose()
    {
        if (IsRunning)
        {
            _process.Kill();
        }

        _process.Dispose();
    }
}
