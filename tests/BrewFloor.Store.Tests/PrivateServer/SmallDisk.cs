using System.Diagnostics;

namespace BrewFloor.Store.Tests.PrivateServer;

/// <summary>A disk of a few megabytes, in memory; needs the right to mount, and the test is skipped without it.</summary>
internal sealed class SmallDisk : IAsyncDisposable
{
    private SmallDisk(string path) => Path = path;

    public string Path { get; }

    private string Filling => $"{Path}/filling";

    public static SmallDisk Mount(string root, int megabytes)
    {
        var path = Directory.CreateDirectory($"{root}/disk").FullName;
        Assert.SkipUnless(
            Run("mount", "-t", "tmpfs", "-o", $"size={megabytes}m,mode=0755", "tmpfs", path) == 0,
            "no right to mount a small disk"
        );
        return new(path);
    }

    public void Fill()
    {
        using var filling = new FileStream(Filling, FileMode.Create);
        try
        {
            while (true)
            {
                filling.Write(new byte[4096]);
                filling.Flush();
            }
        }
        catch (IOException)
        {
            // Full.
        }
    }

    public void MakeRoom() => File.Delete(Filling);

    public ValueTask DisposeAsync()
    {
        Assert.Equal(0, Run("umount", Path));
        return ValueTask.CompletedTask;
    }

    private static int Run(string program, params string[] arguments)
    {
        using var process = Process.Start(
            new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardError = true }
        )!;
        process.WaitForExit();
        return process.ExitCode;
    }
}
