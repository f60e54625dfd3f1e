using System.Security.Cryptography;
using System.Text;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Web.Hosting;

/// <summary>
/// What seals the keys in the database, and is kept outside it: as a variable, in a file that is named, or in a file of the data
/// folder that is made once. Instances that share a database share it.
/// </summary>
public sealed class FloorSecret
{
    public const string Variable = "BREWFLOOR_SECRET";
    public const string FileVariable = "BREWFLOOR_SECRET_FILE";
    public const int Shortest = 32;

    private const int Bytes = 32;

    private const int MostTries = 500;

    private static readonly TimeSpan Soon = TimeSpan.FromMilliseconds(10);

    private readonly byte[] _key;

    private FloorSecret(string text) =>
        _key = HKDF.DeriveKey(
            HashAlgorithmName.SHA256,
            Encoding.UTF8.GetBytes(text),
            Bytes,
            info: "BrewFloor keys in the database"u8.ToArray()
        );

    /// <summary>256 bits for AES.</summary>
    public ReadOnlySpan<byte> Key => _key;

    /// <exception cref="StartProblemException">It is too short, or its file cannot be read.</exception>
    public static FloorSecret Of(string dataFolder, Func<string, string?> environment)
    {
        if (SecretFile.Of(Variable, environment) is { } given)
        {
            return new(LongEnough(given, string.IsNullOrWhiteSpace(environment(Variable)) ? FileVariable : Variable));
        }

        return new(OwnOf(Path.Combine(Directory.CreateDirectory(dataFolder).FullName, "secret")));
    }

    // Two starts at once end with one secret: it is made by whoever holds the turn and finds none.
    private static string OwnOf(string path)
    {
        for (var tries = 0; !File.Exists(path); tries++)
        {
            if (tries > MostTries)
            {
                throw new StartProblemException(
                    $"{path} cannot be made: nobody gets hold of {path}.turn. Is the disk full?"
                );
            }

            using var turn = OwnersFile.TakeTurn(path + ".turn");
            if (turn is null)
            {
                Thread.Sleep(Soon);
            }
            else if (!File.Exists(path))
            {
                Make(path);
            }
        }

        return LongEnough(File.ReadAllText(path).Trim(), path);
    }

    // Written beside and moved into place: it is never seen half-written, and never left so.
    private static void Make(string path)
    {
        var beside = $"{path}.{Guid.CreateVersion7():N}";
        using (var file = OwnersFile.Create(beside))
        {
            file.Write(Encoding.ASCII.GetBytes(RandomNumberGenerator.GetHexString(2 * Bytes, lowercase: true)));
        }

        File.Move(beside, path, overwrite: false);
    }

    private static string LongEnough(string text, string from) =>
        text.Length >= Shortest
            ? text
            : throw new StartProblemException(
                $"The secret of {from} has fewer than {Shortest} characters. Make one with: openssl rand -hex 32"
            );
}
