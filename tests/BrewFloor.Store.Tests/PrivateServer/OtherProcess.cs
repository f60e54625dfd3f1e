using System.Diagnostics;
using BrewFloor.Store.Tests.PrivateServer;
using Xunit.Sdk;
using Xunit.v3;

[assembly: TestPipelineStartup(typeof(OtherProcess))]

namespace BrewFloor.Store.Tests.PrivateServer;

/// <summary>An app in a process of its own, to be killed: this program once more, told to hold a folder instead of testing.</summary>
public sealed class OtherProcess : ITestPipelineStartup
{
    private const string Folder = "BREWFLOOR_TEST_HOLD";

    public static string UpIn(string root) => $"{root}/up";

    public static Process Start(string root)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, ["-method", "none"]) { UseShellExecute = false };
        start.Environment[Folder] = root;
        return Process.Start(start)!;
    }

    public async ValueTask StartAsync(IMessageSink diagnosticMessageSink)
    {
        if (Environment.GetEnvironmentVariable(Folder) is not { Length: > 0 } root)
        {
            return;
        }

        await using var cluster = await new FolderUnderTest(root).StartAsync();
        await File.WriteAllTextAsync(UpIn(root), "");
        await Task.Delay(TimeSpan.FromMinutes(2)); // killed long before
    }

    public ValueTask StopAsync() => ValueTask.CompletedTask;
}
