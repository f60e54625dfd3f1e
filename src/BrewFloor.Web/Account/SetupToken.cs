using System.Security.Cryptography;
using System.Text;

namespace BrewFloor.Web.Account;

/// <summary>Printed on the console of a floor without an owner: whoever can read it may become the owner, once, within 15 minutes.</summary>
/// <remarks>Made anew at every start. It is compared in constant time, and which floor has an owner already is the store's to say.</remarks>
public sealed class SetupToken(TimeProvider clock)
{
    public static readonly TimeSpan Lasts = TimeSpan.FromMinutes(15);

    private readonly DateTimeOffset _until = clock.GetUtcNow() + Lasts;

    public string Text { get; } = RandomNumberGenerator.GetHexString(32, lowercase: true);

    public bool IsOver => clock.GetUtcNow() >= _until;

    public bool Is(string? typed) =>
        !IsOver
        && CryptographicOperations.FixedTimeEquals(
            Encoding.UTF8.GetBytes(Text),
            Encoding.UTF8.GetBytes((typed ?? "").Trim().ToLowerInvariant())
        );
}
