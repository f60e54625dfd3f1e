using System.Globalization;
using System.Text;
using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;
using Serilog.Sinks.File;

namespace BrewFloor.Web.Hosting;

/// <summary>What the process says about itself: on the console, and as lines of JSON in the data folder, a file a day.</summary>
/// <remarks>Of each line's request the id is kept: it is the reference that a person reads on the page of an error.</remarks>
internal static class ProcessLog
{
    private const int FilesKept = 14;

    private const long LargestFile = 10 * 1024 * 1024;
    private const string OnConsole = "[{Timestamp:HH:mm:ss} {Level:u3}] {Message:lj} {RequestId}{NewLine}{Exception}";

    public static IServiceCollection AddProcessLog(this IServiceCollection services, StartOptions options) =>
        services.AddSerilog(
            log => Configured(log, options),
            preserveStaticLogger: true // several apps in one process write into a folder each
        );

    private static void Configured(LoggerConfiguration log, StartOptions options) =>
        log
            .MinimumLevel.Information()
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .Enrich.FromLogContext()
            .WriteTo.Console(outputTemplate: OnConsole, formatProvider: CultureInfo.InvariantCulture)
            .WriteTo.File(
                new CompactJsonFormatter(),
                FileIn(options.DataFolder),
                fileSizeLimitBytes: LargestFile,
                rollingInterval: RollingInterval.Day,
                rollOnFileSizeLimit: true,
                retainedFileCountLimit: FilesKept,
                hooks: new ForOwnerOnly()
            );

    /// <summary>The day is put before the ending. A backup leaves these files out.</summary>
    private static string FileIn(string folder) => Path.Combine(folder, "app.log.jsonl");

    // Names and addresses can stand in it.
    private sealed class ForOwnerOnly : FileLifecycleHooks
    {
        public override Stream OnFileOpened(string path, Stream underlyingStream, Encoding encoding)
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
            return underlyingStream;
        }
    }
}
