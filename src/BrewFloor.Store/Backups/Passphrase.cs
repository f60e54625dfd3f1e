using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Text;

namespace BrewFloor.Store.Backups;

/// <summary>What opens a sealed backup: words that somebody types or that stand in a file. It is never printed.</summary>
public sealed class Passphrase
{
    /// <summary>Characters of a new one (ours): a file that is carried away can be tried at leisure.</summary>
    public const int Shortest = 12;

    private readonly byte[] _words;

    private Passphrase(byte[] words) => _words = words;

    /// <summary>Without the line's end and the blanks around it; an é typed on any keyboard is the same é.</summary>
    public static Passphrase Of(string typed) =>
        new(Encoding.UTF8.GetBytes(typed.Trim().Normalize(NormalizationForm.FormC)));

    /// <summary>Long enough to seal something new with.</summary>
    public static bool IsLongEnough([NotNullWhen(true)] string? typed) => typed?.Trim().Length >= Shortest;

    internal byte[] Stretched(byte[] salt, int iterations, int length) =>
        Rfc2898DeriveBytes.Pbkdf2(_words, salt, iterations, HashAlgorithmName.SHA512, length);
}
