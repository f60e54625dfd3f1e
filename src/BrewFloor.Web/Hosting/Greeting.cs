using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using QRCoder;

namespace BrewFloor.Web.Hosting;

/// <summary>What the console says when the app listens: where to open it, on this machine and on the network.</summary>
internal static class Greeting
{
    public static void Say(StartOptions options, IEnumerable<string> listening)
    {
        var port = listening.Select(address => BindingAddress.Parse(address).Port).FirstOrDefault(options.Port);
        Console.WriteLine($"BrewFloor runs on http://localhost:{port}");
        if (!options.IsOnLan)
        {
            return;
        }

        var addresses = OnTheNetwork().Select(address => $"http://{address}:{port}").ToArray();
        if (addresses.Length == 0)
        {
            Console.WriteLine("This machine has no address on a local network: connect it, then start again.");
            return;
        }

        Console.WriteLine($"On this network: {string.Join(", ", addresses)}");
        Console.WriteLine(QrCodeOf(addresses[0]));
        Console.WriteLine("Plain HTTP: whoever shares this network could read along, and passkeys need HTTPS.");
    }

    private static IEnumerable<IPAddress> OnTheNetwork() =>
        NetworkInterface
            .GetAllNetworkInterfaces()
            .Where(card =>
                card.OperationalStatus is OperationalStatus.Up
                && card.NetworkInterfaceType is not NetworkInterfaceType.Loopback
            )
            .SelectMany(card => card.GetIPProperties().UnicastAddresses)
            .Select(unicast => unicast.Address)
            .Where(address => address.AddressFamily is AddressFamily.InterNetwork);

    private static string QrCodeOf(string address)
    {
        using var code = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.M);
        using var drawn = new AsciiQRCode(code);
        return drawn.GetGraphicSmall();
    }
}
