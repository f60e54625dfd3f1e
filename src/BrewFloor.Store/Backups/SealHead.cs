using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Backups;

/// <summary>The head of a sealed backup, which anybody can read: two lines that say what it is and how its key is made.</summary>
/// <param name="App">The version of BrewFloor that made it.</param>
/// <param name="Schema">The newest migration of the tables in it.</param>
/// <param name="Made">As of when.</param>
/// <param name="Iterations">How often the passphrase is stretched.</param>
/// <param name="Salt">Random, of this file alone: two files have no key in common, so no nonce is used twice.</param>
internal sealed record SealHead(string App, string Schema, DateTimeOffset Made, int Iterations, byte[] Salt)
{
    public const int Format = 1;

    private const string Begins = "BrewFloor backup ";
    private const int SaltLength = 32;
    private const int LongestHead = 4096;

    // OWASP's password storage sheet asks for at least 220,000 of PBKDF2 with SHA-512; ours is above, the file may be tried for years.
    private const int UsualIterations = 600_000;
    private const int FewestIterations = 220_000;
    private const int MostIterations = 10_000_000; // a made-up head does not keep the machine busy for a day

    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow,
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
    };

    public static string ThisApp { get; } =
        typeof(SealHead).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    public static SealHead New(string schema, DateTimeOffset made) =>
        new(ThisApp, schema, made, UsualIterations, RandomNumberGenerator.GetBytes(SaltLength));

    /// <summary>As it stands in the file, to the last byte: that is what is sealed.</summary>
    public byte[] ToBytes() =>
        Encoding.UTF8.GetBytes(
            string.Create(CultureInfo.InvariantCulture, $"{Begins}{Format}\n{JsonSerializer.Serialize(this, Json)}\n")
        );

    /// <returns>The head, and its bytes as they stand in the file.</returns>
    /// <exception cref="PrivateServerProblem">Not a backup, or of a newer format.</exception>
    public static async Task<(SealHead Head, byte[] Bytes)> ReadAsync(Stream from, string file, CancellationToken stop)
    {
        var first = await LineAsync(from, stop);
        var line = Encoding.UTF8.GetString(first);
        if (!line.StartsWith(Begins, StringComparison.Ordinal))
        {
            throw BackupProblems.NotABackup(file);
        }

        if (
            !int.TryParse(
                line[Begins.Length..].TrimEnd('\n'),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var format
            )
            || format < 1
        )
        {
            throw BackupProblems.Altered(file);
        }

        if (format > Format)
        {
            throw BackupProblems.Newer(file, $"format {format}");
        }

        var second = await LineAsync(from, stop);
        return TryParse(second, out var head) ? (head, [.. first, .. second]) : throw BackupProblems.Altered(file);
    }

    private static bool TryParse(byte[] line, [NotNullWhen(true)] out SealHead? head)
    {
        try
        {
            head = JsonSerializer.Deserialize<SealHead>(line, Json);
        }
        catch (JsonException)
        {
            head = null;
        }

        return head is { Iterations: >= FewestIterations and <= MostIterations, Salt.Length: SaltLength };
    }

    private static async Task<byte[]> LineAsync(Stream from, CancellationToken stop)
    {
        var line = new List<byte>();
        var one = new byte[1];
        while (line.Count < LongestHead && await from.ReadAsync(one, stop) == 1)
        {
            line.Add(one[0]);
            if (one[0] == '\n')
            {
                break;
            }
        }

        return [.. line];
    }
}
