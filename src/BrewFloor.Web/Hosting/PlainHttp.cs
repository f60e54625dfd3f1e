using System.Net;
using System.Net.Sockets;

namespace BrewFloor.Web.Hosting;

/// <summary>Without TLS anybody on the way reads along: within a house that is the house's choice, across the internet it is refused.</summary>
internal static class PlainHttp
{
    /// <summary>A password may not travel like this: no TLS, and not within the house.</summary>
    public static bool IsRefused(HttpContext http) =>
        !http.Request.IsHttps && !IsPrivate(http.Connection.RemoteIpAddress);

    /// <summary>It may, but whoever types one should know.</summary>
    public static bool IsOpen(HttpContext http) =>
        !http.Request.IsHttps && http.Connection.RemoteIpAddress is { } from && !IPAddress.IsLoopback(from);

    /// <summary>This machine, a private or link-local network (RFC 1918, RFC 4193, RFC 3927, RFC 4291), or carrier-grade NAT (RFC 6598).</summary>
    internal static bool IsPrivate(IPAddress? address)
    {
        if (address is null || IPAddress.IsLoopback(address))
        {
            return true; // null: asked within the process
        }

        if (address.IsIPv4MappedToIPv6)
        {
            address = address.MapToIPv4();
        }

        if (address.AddressFamily is AddressFamily.InterNetworkV6)
        {
            return address.IsIPv6LinkLocal || address.IsIPv6UniqueLocal;
        }

        return address.GetAddressBytes()
            is [10, ..]
                or [192, 168, ..]
                or [172, >= 16 and <= 31, ..]
                or [169, 254, ..]
                or [100, >= 64 and <= 127, ..];
    }
}

/// <summary>A cookie that goes over TLS alone, but for addresses within the house over plain HTTP.</summary>
internal sealed class HouseCookie : CookieBuilder
{
    public override CookieOptions Build(HttpContext context, DateTimeOffset expiresFrom)
    {
        var options = base.Build(context, expiresFrom);
        options.Secure = context.Request.IsHttps || PlainHttp.IsRefused(context);
        options.Path = LocalPaths.Root(context);
        return options;
    }
}
