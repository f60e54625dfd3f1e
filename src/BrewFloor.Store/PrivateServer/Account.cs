using System.Diagnostics;

namespace BrewFloor.Store.PrivateServer;

/// <summary>How a program ended: its exit code and what it printed.</summary>
internal sealed record Ran(int Code, string Output, string Errors)
{
    public bool IsDone => Code == 0;
}

/// <summary>Whom programs are run as: the app's own user, or another one when the app is root.</summary>
/// <remarks>
/// What lies in a folder of the other user is written as that user, never as root: a planted link would
/// otherwise let him choose what root writes to.
/// </remarks>
internal sealed record Account(string? User)
{
    /// <summary>The user who runs the app.</summary>
    public static readonly Account Own = new((string?)null);

    /// <summary>PostgreSQL refuses to run as root.</summary>
    public static Account ForPostgres(PrivateServerOptions options) =>
        Environment.IsPrivilegedProcess ? new(options.User) : Own;

    public async Task<bool> ExistsAsync(CancellationToken stop) =>
        User is null || (await Own.RunAsync("id", ["-u", "--", User], stop)).IsDone;

    /// <summary>Makes files or folders this user's; they are the app's own otherwise.</summary>
    public async Task TakeOverAsync(string path, CancellationToken stop)
    {
        if (User is not null)
        {
            await Own.MustRunAsync("chown", ["-h", "--", $"{User}:", path], stop);
        }
    }

    /// <summary>Writes a file as this user, wholly or, on a full disk, not at all.</summary>
    public Task WriteAsync(string path, string text, CancellationToken stop) =>
        MustRunAsync("sh", ["-c", """cat > "$1.part" && mv -- "$1.part" "$1" """, "sh", path], stop, text);

    public async Task<Ran> MustRunAsync(
        string program,
        IEnumerable<string> arguments,
        CancellationToken stop,
        string input = ""
    )
    {
        var ran = await RunAsync(program, arguments, stop, input);
        return ran.IsDone ? ran : throw new IOException($"{program} ended with {ran.Code}: {ran.Errors.Trim()}");
    }

    /// <summary>Runs a program to its end with an environment of its own, so that neither secrets get in nor PG* settings.</summary>
    public async Task<Ran> RunAsync(
        string program,
        IEnumerable<string> arguments,
        CancellationToken stop,
        string input = "",
        IReadOnlyDictionary<string, string>? environment = null
    )
    {
        using var process = Process.Start(Started(program, arguments, environment))!;
        var output = process.StandardOutput.ReadToEndAsync(stop);
        var errors = process.StandardError.ReadToEndAsync(stop);
        try
        {
            await SayAsync(process, input);
            await process.WaitForExitAsync(stop);
            return new(process.ExitCode, await output, await errors);
        }
        catch (OperationCanceledException)
        {
            process.Kill();
            throw;
        }
    }

    /// <summary>Runs a program that takes or gives more than fits into memory.</summary>
    /// <param name="talk">Writes into its input (the first) or reads its output (the second), to the end.</param>
    public async Task<Ran> PipeAsync(
        string program,
        IEnumerable<string> arguments,
        IReadOnlyDictionary<string, string> environment,
        Func<Stream, Stream, Task> talk,
        CancellationToken stop
    )
    {
        using var process = Process.Start(Started(program, arguments, environment))!;
        try
        {
            var errors = process.StandardError.ReadToEndAsync(stop);
            var broken = await TalkAsync(process, talk);
            await process.WaitForExitAsync(stop);
            return broken is not null && process.ExitCode == 0
                ? throw broken
                : new(process.ExitCode, Output: "", await errors);
        }
        catch
        {
            process.Kill(); // half of what it was to be told is worth nothing
            throw;
        }
    }

    private static async Task<IOException?> TalkAsync(Process process, Func<Stream, Stream, Task> talk)
    {
        try
        {
            await talk(process.StandardInput.BaseStream, process.StandardOutput.BaseStream);
            process.StandardInput.Close();
            return null;
        }
        catch (IOException e) when (e.Message.Contains("Broken pipe", StringComparison.Ordinal))
        {
            return e; // it ended early; its exit code says why
        }
    }

    private static async Task SayAsync(Process process, string input)
    {
        try
        {
            await process.StandardInput.WriteAsync(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It ended without reading; its exit code says why.
        }
    }

    private ProcessStartInfo Started(
        string program,
        IEnumerable<string> arguments,
        IReadOnlyDictionary<string, string>? environment
    )
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            UseShellExecute = false,
            WorkingDirectory = "/", // a place every user may stand in
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (User is not null)
        {
            start.UserName = User;
        }

        start.Environment.Clear();
        start.Environment["PATH"] = Environment.GetEnvironmentVariable("PATH") ?? "/usr/bin:/bin";
        start.Environment["HOME"] = "/";
        start.Environment["LC_ALL"] = "C.UTF-8"; // messages in English: some are read below
        foreach (var (name, value) in environment ?? new Dictionary<string, string>(StringComparer.Ordinal))
        {
            start.Environment[name] = value;
        }

        return start;
    }
}
