using System.Security.Cryptography;
using BrewFloor.Domain.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace BrewFloor.Web.Account;

/// <summary>Keeps passwords as PBKDF2-HMAC-SHA512 with 220,000 rounds; asks for 8 characters at least, advises 15, and refuses common ones.</summary>
/// <remarks>The framework's hasher with its rounds raised: its own default is 100,000.</remarks>
public sealed class Passwords
{
    public const int Shortest = 8;
    public const int Advised = 15;
    public const int Longest = 200; // a longer one only keeps the processor busy
    public const int Rounds = 220_000;

    // Without look-alikes (0 O, 1 l I), so that it can be read out across a brewhouse.
    private const string Readable = "abcdefghjkmnpqrstuvwxyz23456789";

    private readonly PasswordHasher<Author> _hasher = new(
        Options.Create(new PasswordHasherOptions { IterationCount = Rounds })
    );
    private readonly Author _nobody = new(Guid.Empty, Role.Viewer);
    private readonly string _hashOfNobody;

    public Passwords() => _hashOfNobody = Hash(RandomNumberGenerator.GetHexString(32));

    public string Hash(string password) => _hasher.HashPassword(_nobody, password);

    /// <summary>Whether the password is right. An unknown name takes as long as a wrong password.</summary>
    public bool Fits(string? hash, string password) =>
        password.Length <= Longest
        && _hasher.VerifyHashedPassword(_nobody, hash ?? _hashOfNobody, password)
            is not PasswordVerificationResult.Failed
        && hash is not null;

    /// <summary>A one-use password of 16 readable characters, 79 bits.</summary>
    public static string MakeOne() =>
        string.Join('-', RandomNumberGenerator.GetItems<char>(Readable, 16).Chunk(4).Select(four => new string(four)));
}
