using System.Net;
using System.Net.Sockets;
using BrewFloor.Store.People;

namespace BrewFloor.Web.Account;

/// <summary>How fast names and passwords may be tried: per name, whether somebody is called so or not, and per address.</summary>
/// <remarks>
/// What counts for a known name is in the database, for all instances; the rest is in memory, and gone with a restart.
/// </remarks>
public sealed class Guessing(Accounts accounts, TimeProvider clock)
{
    /// <summary>A name that was tried in vain so often waits.</summary>
    public static readonly TimeSpan LockedFor = TimeSpan.FromMinutes(5);

    // Each about twice the one before: nobody who mistypes notices, and a list of passwords takes years.
    private static readonly TimeSpan[] Growing =
    [
        TimeSpan.FromSeconds(10),
        TimeSpan.FromSeconds(20),
        TimeSpan.FromSeconds(40),
        TimeSpan.FromSeconds(80),
        TimeSpan.FromSeconds(160),
        TimeSpan.FromSeconds(300),
    ];

    private readonly WrongTries _ofPlaces = new(clock, Growing);
    private readonly WrongTries _ofNobody = new(clock, LockedFor);

    /// <returns>Null: try. Counted as wrong until <see cref="RightAsync"/>.</returns>
    public async Task<SignInTry?> BeginAsync(string name, Person? account, string place, CancellationToken stop)
    {
        if (_ofPlaces.Begin(place) is { } free)
        {
            return new SignInTry.TooFast(free - clock.GetUtcNow());
        }

        if (await LockedUntilAsync(name, account, stop) is not { } until)
        {
            return null;
        }

        return new SignInTry.Locked(until);
    }

    public async Task RightAsync(Person account, string place, CancellationToken stop)
    {
        _ofPlaces.Right(place);
        await accounts.SignedInAsync(account.Id, stop);
    }

    private async Task<DateTimeOffset?> LockedUntilAsync(string name, Person? account, CancellationToken stop)
    {
        if (account is null)
        {
            return _ofNobody.Begin(name.Trim().ToUpperInvariant());
        }

        var now = clock.GetUtcNow();
        var lockout = new Lockout(WrongTries.Free, now + LockedFor, now - WrongTries.ForgottenAfter);
        return await accounts.BeginTryAsync(account.Id, now, lockout, stop);
    }

    /// <summary>Where somebody is: an address, or the network of one household, whose devices choose theirs in it.</summary>
    internal static string Place(IPAddress? from)
    {
        if (from is null or { IsIPv4MappedToIPv6: true } || from.AddressFamily is not AddressFamily.InterNetworkV6)
        {
            return (from?.IsIPv4MappedToIPv6 is true ? from.MapToIPv4() : from)?.ToString() ?? "";
        }

        return Convert.ToHexString(from.GetAddressBytes().AsSpan(0, 8)); // RFC 6177: a site has a /64 at least
    }
}
