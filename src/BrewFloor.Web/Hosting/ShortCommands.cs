using BrewFloor.Domain.People;
using BrewFloor.Store;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Account;
using BrewFloor.Web.PrivateServer;

namespace BrewFloor.Web.Hosting;

/// <summary>What whoever runs the floor does from the console, also while the app runs.</summary>
public static class ShortCommands
{
    private static readonly string[] Scopes = ["read", "log"];

    public static async Task<int> MigrateAsync(StartOptions options)
    {
        await using var database = await BorrowedDatabase.FromAsync(AddressOf(options), CancellationToken.None);
        await Migrator.MigrateAsync(database.Connections.Owner, TimeZoneInfo.Local.Id, CancellationToken.None);
        Console.WriteLine("The database is as this program wants it.");
        return 0;
    }

    public static Task<int> UserAsync(StartOptions options) =>
        options.Words switch
        {
            ["add", var name] => WithPeopleAsync(options, people => AddAsync(people, NameIn(name), RoleIn(options))),
            ["list"] => WithPeopleAsync(options, ListAsync),
            ["reset-password", var name] => WithPeopleAsync(options, people => ResetAsync(people, name)),
            _ => throw new StartProblemException(
                "user add NAME --role viewer|helper|brewer|owner, user list, user reset-password NAME"
            ),
        };

    public static Task<int> TokenAsync(StartOptions options) =>
        options.Words is ["add", var name]
            ? WithPeopleAsync(options, people => AddTokenAsync(people, NameIn(name), ScopesIn(options)))
            : throw new StartProblemException("token add NAME --scope read,log");

    private static async Task<int> AddAsync(PeopleAtHand people, string name, Role role)
    {
        var password = Passwords.MakeOne();
        if (
            await people.Accounts.AddAsync(
                name,
                role,
                people.Passwords.Hash(password),
                mustChange: true,
                TimeProvider.System.GetUtcNow(),
                CancellationToken.None
            )
            is null
        )
        {
            throw new StartProblemException(
                $"Somebody is called {name} already. Choose another name, or reset the password."
            );
        }

        await people.Book.WriteAsync(
            AtConsole(SecurityKind.PersonMade, $"{name}, {RoleNames.Of(role)}"),
            CancellationToken.None
        );
        Console.WriteLine(
            $"{name}, {role.ToString().ToLowerInvariant()}. One-use password, changed at the first sign-in:\n\n    {password}\n"
        );
        return 0;
    }

    private static async Task<int> ListAsync(PeopleAtHand people)
    {
        foreach (var account in await people.Accounts.AllAsync(CancellationToken.None))
        {
            Console.WriteLine($"{account.Name}\t{account.Role.ToString().ToLowerInvariant()}");
        }

        return 0;
    }

    private static async Task<int> ResetAsync(PeopleAtHand people, string name)
    {
        var account =
            await people.Accounts.ByNameAsync(name, CancellationToken.None)
            ?? throw new StartProblemException($"Nobody is called {name}. \"user list\" shows all names.");
        var password = Passwords.MakeOne();
        await people.Accounts.SetPasswordAsync(
            account.Id,
            people.Passwords.Hash(password),
            mustChange: true,
            CancellationToken.None
        );
        await people.Book.WriteAsync(
            AtConsole(SecurityKind.PasswordReset) with
            {
                About = account.Id,
            },
            CancellationToken.None
        );
        Console.WriteLine($"{account.Name} is signed out everywhere. One-use password:\n\n    {password}\n");
        return 0;
    }

    private static async Task<int> AddTokenAsync(PeopleAtHand people, string name, string[] scopes)
    {
        var now = TimeProvider.System.GetUtcNow();
        var (_, secret) =
            await people.Tokens.AddAsync(name, scopes, by: null, now, CancellationToken.None)
            ?? throw new StartProblemException($"A token is called {name} already. Choose another name.");
        await people.Book.WriteAsync(
            AtConsole(SecurityKind.TokenMade, $"{name}: {string.Join(", ", scopes)}"),
            CancellationToken.None
        );
        Console.WriteLine($"Shown once:\n\n    {secret}\n");
        return 0;
    }

    private static async Task<int> WithPeopleAsync(StartOptions options, Func<PeopleAtHand, Task<int>> act)
    {
        await using var database = await BorrowedDatabase.FromAsync(AddressOf(options), CancellationToken.None);
        await Migrator.MigrateAsync(database.Connections.Owner, TimeZoneInfo.Local.Id, CancellationToken.None);
        await using var services = new ServiceCollection()
            .AddSingleton(TimeProvider.System)
            .AddFloorStore(_ => database.Connections.Application)
            .AddSingleton<Passwords>()
            .AddSingleton<PeopleAtHand>()
            .BuildServiceProvider();
        return await act(services.GetRequiredService<PeopleAtHand>());
    }

    internal static DatabaseAddress AddressOf(StartOptions options) =>
        DatabaseSetup.AddressIn(new ConfigurationBuilder().AddEnvironmentVariables().Build(), options.DataFolder);

    private static string NameIn(string typed) =>
        typed.Trim() is { Length: > 0 and <= Person.LongestName } name
            ? name
            : throw new StartProblemException($"A name has 1 to {Person.LongestName} characters. Choose another.");

    private static Role RoleIn(StartOptions options) =>
        options.Named.TryGetValue("--role", out var text)
        && Enum.TryParse<Role>(text, ignoreCase: true, out var role)
        && Enum.IsDefined(role)
            ? role
            : throw new StartProblemException("Say which role with --role: viewer, helper, brewer or owner.");

    private static SecurityEvent AtConsole(SecurityKind kind, string? detail = null) =>
        new(kind) { Detail = detail, Network = SecurityLog.Console };

    private static string[] ScopesIn(StartOptions options)
    {
        var scopes = options
            .Named.GetValueOrDefault("--scope", "")
            .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return scopes.Length > 0 && scopes.All(scope => Scopes.Contains(scope, StringComparer.Ordinal))
            ? scopes
            : throw new StartProblemException("Say what the token may do with --scope: read, log, or read,log.");
    }

    private sealed record PeopleAtHand(Accounts Accounts, Tokens Tokens, Passwords Passwords, SecurityBook Book);
}
