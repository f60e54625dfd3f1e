using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace BrewFloor.Store.People;

/// <summary>Secrets that are shown once when made and kept as a hash: tokens of programs, links of invites.</summary>
internal static class ShownOnce
{
    /// <summary>Nobody guesses it: a plain hash is enough.</summary>
    public static string Make(int bytes) => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(bytes));

    public static byte[] Hash(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));
}
