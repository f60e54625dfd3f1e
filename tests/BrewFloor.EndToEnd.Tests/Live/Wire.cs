using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace BrewFloor.EndToEnd.Tests.Live;

/// <summary>What lies between a phone and the app, to be cut through and mended: a port that passes everything on.</summary>
internal sealed class Wire : IDisposable
{
    private readonly Uri _app;
    private readonly ConcurrentBag<TcpClient> _ends = [];
    private TcpListener _listener;

    public Wire(string app)
    {
        _app = new(app);
        _listener = new(IPAddress.Loopback, 0);
        _listener.Start();
        Port = ((IPEndPoint)_listener.LocalEndpoint).Port;
        _ = AcceptAsync(_listener);
    }

    private int Port { get; }

    public string Address => $"http://127.0.0.1:{Port}";

    public void Cut()
    {
        _listener.Stop();
        while (_ends.TryTake(out var end))
        {
            end.Dispose();
        }
    }

    public void Mend()
    {
        _listener = new(IPAddress.Loopback, Port);
        _listener.Start();
        _ = AcceptAsync(_listener);
    }

    public void Dispose() => Cut();

    private async Task AcceptAsync(TcpListener listener)
    {
        try
        {
            while (true)
            {
                var phone = await listener.AcceptTcpClientAsync();
                var app = new TcpClient();
                await app.ConnectAsync(_app.Host, _app.Port);
                _ends.Add(phone);
                _ends.Add(app);
                _ = Task.WhenAny(PassAsync(phone, app), PassAsync(app, phone));
            }
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException)
        {
            // Cut.
        }
    }

    private static async Task PassAsync(TcpClient from, TcpClient to)
    {
        try
        {
            await from.GetStream().CopyToAsync(to.GetStream());
            to.Client.Shutdown(SocketShutdown.Send);
        }
        catch (Exception e)
            when (e is IOException or SocketException or ObjectDisposedException or InvalidOperationException)
        {
            // Cut, or one side has gone.
        }
    }
}
