using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Npgsql;
using TestServer = BrewFloor.Store.Tests.Postgres.TestServer;

namespace BrewFloor.Web.Tests;

/// <summary>
/// The whole app on a port of its own, with a database of its own: everything a request passes through in production.
/// Take it as a class fixture; each class has its own floor.
/// </summary>
/// <remarks>
/// <see cref="As(Role)"/> is a browser somebody is signed in with, <see cref="WithTokenAsync"/> a program, and
/// <see cref="Stranger"/> neither. None of them follows redirects. <see cref="TankAsync"/> and <see cref="AppendAsync"/> fill
/// the floor through the same doors the app uses.
/// </remarks>
public sealed class FloorApp(TestServer server) : WebApplicationFactory<Program>, IAsyncLifetime
{
    public const string Password = "barley and water";

    private readonly string _made = Directory.CreateTempSubdirectory("brewfloor-web-").FullName;
    private readonly Dictionary<Role, Person> _people = [];
    private readonly List<HttpClient> _clients = [];
    private Connections? _connections;

    /// <summary>What this test's app has in place of its own.</summary>
    public Action<IServiceCollection>? Instead { get; init; }

    /// <summary>The path it stands below.</summary>
    public string? Below { get; init; }

    /// <summary>What its connections say to the server, as <c>-c name=value</c>.</summary>
    public string? Saying { get; init; }

    /// <summary>The one whose place this one takes, on the same folder and database.</summary>
    public FloorApp? Before { get; init; }

    private string Folder => Before?.Folder ?? _made;

    public static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    public Author Owner => AuthorOf(Role.Owner);

    /// <summary>The way in as the role that owns the tables, for a test that breaks something.</summary>
    public string OwnerConnection => _connections!.Owner;

    /// <summary>The app's own.</summary>
    public T Get<T>()
        where T : notnull => Services.GetRequiredService<T>();

    /// <summary>Starts it; a person of each role is there, named as their role.</summary>
    public async ValueTask InitializeAsync()
    {
        await StartEmptyAsync();
        var hash = Get<Passwords>().Hash(Password);
        foreach (var role in Enum.GetValues<Role>())
        {
            _people[role] = await PersonAsync(role.ToString(), role, hash);
        }
    }

    /// <summary>Starts it as on its first day: nobody is there.</summary>
    public async Task StartEmptyAsync()
    {
        _connections = Before?._connections ?? await server.NewDatabaseAsync(Stop);
        UseKestrel();
        StartServer();
        while (!Get<Readiness>().IsReady)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(10), Stop);
        }
    }

    public Person Person(Role role) => _people[role];

    public Author AuthorOf(Role role) => new(_people[role].Id, role);

    /// <param name="hash">Null: only a name, no account.</param>
    public async Task<Person> PersonAsync(string name, Role role, string? hash, bool mustChange = false) =>
        await Get<Accounts>().AddAsync(name, role, hash, mustChange, TimeProvider.System.GetUtcNow(), Stop)
        ?? throw new InvalidOperationException($"Somebody is called {name} already.");

    /// <summary>A browser that nobody is signed in with; it keeps the cookies it is given.</summary>
    /// <param name="from">Where it stands: any address of this machine, 127.0.0.1 to 127.255.255.254.</param>
    public HttpClient Stranger(string from = "127.0.0.1") => Client(new CookieContainer(), from);

    /// <summary>A browser with the cookie that signing in gives.</summary>
    public HttpClient As(Role role) => As(_people[role]);

    /// <inheritdoc cref="As(Role)"/>
    public HttpClient As(Person person) => With(CookiesOf(person));

    /// <summary>A browser with cookies that were given elsewhere.</summary>
    public HttpClient With(CookieContainer cookies) => Client(cookies, "127.0.0.1");

    public CookieContainer CookiesOf(Person person)
    {
        var scheme = CookieAuthenticationDefaults.AuthenticationScheme;
        var cookie = Get<IOptionsMonitor<CookieAuthenticationOptions>>().Get(scheme);
        var ticket = new AuthenticationTicket(
            SignIns.PrincipalOf(person),
            new AuthenticationProperties
            {
                IssuedUtc = TimeProvider.System.GetUtcNow(),
                ExpiresUtc = TimeProvider.System.GetUtcNow().AddDays(1),
            },
            scheme
        );
        var cookies = new CookieContainer();
        cookies.Add(
            ClientOptions.BaseAddress,
            new Cookie(cookie.Cookie.Name!, cookie.TicketDataFormat.Protect(ticket))
        );
        return cookies;
    }

    /// <summary>A program with a new token of these scopes: read, log.</summary>
    public async Task<HttpClient> WithTokenAsync(params string[] scopes)
    {
        var (_, secret) = await TokenAsync(scopes);
        var client = Stranger();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        return client;
    }

    public async Task<(Token Token, string Secret)> TokenAsync(params string[] scopes)
    {
        var (name, now) = ($"Gauge {Guid.CreateVersion7():N}", TimeProvider.System.GetUtcNow());
        return (await Get<Tokens>().AddAsync(name, scopes, by: null, now, Stop))!.Value;
    }

    /// <summary>A plastic conical of so many litres, empty, soil unknown.</summary>
    public async Task<Tank> TankAsync(string code, double litres = 1200)
    {
        var tank = FreshFloor.ATank(Guid.CreateVersion7(), code, litres);
        await AddAsync(tank);
        return tank;
    }

    public async Task AddAsync(Tank tank) =>
        Assert.IsType<Edited.Done>(
            await Get<Inventory>().AddAsync(tank, new Author(Guid.CreateVersion7(), Role.Owner), Stop)
        );

    /// <summary>As the owner; whatever the floor objects to is waved through or done anyway. Impossible stays impossible.</summary>
    public async Task<IReadOnlyList<StoredEntry>> AppendAsync(params LogEntry[] entries)
    {
        var author = Owner;
        var heard = await Get<FloorLog>().CheckAsync(FreshFloor.Request(author, entries), Stop);
        string[] codes = [.. heard.Judged.SelectMany(j => j.Verdict.Objections).Select(o => o.Code)];
        var answer = new Answer("it is so", [.. codes], AlreadyHappened: true);
        var appended = await Get<FloorLog>()
            .AppendAsync(new([.. entries.Select(e => new Sent(e, answer))], author), Stop);
        return appended is Appended.Stored stored
            ? [.. stored.Entries]
            : throw new InvalidOperationException($"Not stored: {appended}, {string.Join(", ", codes)}");
    }

    /// <summary>How many entries are in the log.</summary>
    public async Task<long> EntriesAsync() => await AskAsync<long>("SELECT count(*) FROM entries");

    /// <summary>Asks the database itself.</summary>
    public async Task<T> AskAsync<T>(string question)
    {
        await using var command = Get<NpgsqlDataSource>().CreateCommand(question);
        return (T)(await command.ExecuteScalarAsync(Stop))!;
    }

    private HttpClient Client(CookieContainer cookies, string from)
    {
        var handler = new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            CookieContainer = cookies,
            ConnectCallback = async (context, stop) =>
            {
                var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
                socket.Bind(new IPEndPoint(IPAddress.Parse(from), 0));
                await socket.ConnectAsync(IPAddress.Loopback, context.DnsEndPoint.Port, stop);
                return new NetworkStream(socket, ownsSocket: true);
            },
        };
        var client = new HttpClient(handler) { BaseAddress = ClientOptions.BaseAddress };
        lock (_clients)
        {
            _clients.Add(client);
        }

        return client;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Production");
        var application = new NpgsqlConnectionStringBuilder(_connections!.Application);
        application.Options = $"{application.Options} {Saying}".Trim() is { Length: > 0 } options ? options : null;
        builder.UseSetting("ConnectionStrings:BrewFloor", application.ConnectionString);
        builder.UseSetting("ConnectionStrings:BrewFloorOwner", _connections.Owner);
        builder.UseSetting("data", Folder);
        builder.UseSetting("port", "0");
        builder.UseSetting(BasePath.Variable, Below);
        builder.ConfigureTestServices(services => Instead?.Invoke(services));
    }

    public override async ValueTask DisposeAsync()
    {
        _clients.ForEach(client => client.Dispose());
        await base.DisposeAsync();
        Directory.Delete(_made, recursive: true);
    }
}
