using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace BrewFloor.Web.Hosting;

/// <summary>Whose word is taken for who is asking and whether over TLS: proxies on this machine, and those that are named.</summary>
public sealed record TrustedProxies(IReadOnlyList<IPNetwork> Networks)
{
    public const string Variable = "BREWFLOOR_TRUSTED_PROXIES";

    private static readonly IPNetwork[] ThisMachine = [IPNetwork.Parse("127.0.0.0/8"), IPNetwork.Parse("::1/128")];

    /// <param name="text">Addresses and networks, with commas or gaps between them; null: only this machine.</param>
    /// <exception cref="StartProblemException">One of them is neither.</exception>
    public static TrustedProxies Parse(string? text) =>
        new([
            .. ThisMachine,
            .. (text ?? "")
                .Split([',', ' ', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Select(NetworkOf),
        ]);

    /// <summary>Before anything looks at who asks.</summary>
    public static void Configure(ForwardedHeadersOptions options, TrustedProxies trusted)
    {
        options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto;
        options.ForwardLimit = null; // a chain, as long as each of it is trusted
        options.KnownProxies.Clear();
        options.KnownIPNetworks.Clear();
        foreach (var network in trusted.Networks)
        {
            options.KnownIPNetworks.Add(network);
        }
    }

    private static IPNetwork NetworkOf(string text) =>
        IPNetwork.TryParse(text, out var network) ? network
        : IPAddress.TryParse(text, out var one) ? new(one, one.GetAddressBytes().Length * 8)
        : throw new StartProblemException(
            $"{Variable} holds \"{text}\", which is neither an address nor a network like 172.18.0.0/16."
        );
}
