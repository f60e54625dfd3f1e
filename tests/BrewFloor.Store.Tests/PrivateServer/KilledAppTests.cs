namespace BrewFloor.Store.Tests.PrivateServer;

public sealed class KilledAppTests : IAsyncDisposable
{
    private readonly FolderUnderTest _folder = new();

    public ValueTask DisposeAsync() => _folder.DisposeAsync();

    [Fact]
    public async Task A_process_that_is_killed_lets_go_of_the_folder_and_leaves_its_server_to_the_next()
    {
        using var app = OtherProcess.Start(_folder.Root);
        await FolderUnderTest.EventuallyAsync(() => File.Exists(OtherProcess.UpIn(_folder.Root)) || app.HasExited);
        var pid = _folder.Pid;
        Assert.Equal("folder-in-use", (await _folder.RefusesAsync()).Code);

        app.Kill();
        await app.WaitForExitAsync(FolderUnderTest.Stop);
        await using var next = await _folder.StartAsync();

        Assert.NotEqual(0, pid);
        Assert.True(next.WasRunning);
        Assert.Equal(pid, _folder.Pid);
    }

    // The initdb of the killed app may still be writing when the next start begins its own.
    [Fact]
    public async Task A_process_that_is_killed_while_it_makes_the_database_is_no_trouble_to_the_next()
    {
        using var app = OtherProcess.Start(_folder.Root);
        await FolderUnderTest.EventuallyAsync(() => IsHalfMade || app.HasExited);
        app.Kill();
        await app.WaitForExitAsync(FolderUnderTest.Stop);
        Assert.True(IsHalfMade);
        Assert.False(Directory.Exists(_folder.Data));

        await using var next = await _folder.StartAsync();

        Assert.Equal(1, await FolderUnderTest.AskAsync(next.Connections.Application, "SELECT 1"));
    }

    private bool IsHalfMade =>
        Directory.Exists(_folder.Path)
        && Directory.GetFiles(_folder.Path, "PG_VERSION", SearchOption.AllDirectories) is not [];
}
