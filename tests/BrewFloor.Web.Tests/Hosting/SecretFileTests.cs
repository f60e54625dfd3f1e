using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Hosting;
using BrewFloor.Web.PrivateServer;
using Microsoft.Extensions.Configuration;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>Connection strings as containers hand secrets in: as files.</summary>
public sealed class SecretFileTests : IDisposable
{
    private const string Application = "ConnectionStrings__BrewFloor";
    private const string Owner = "ConnectionStrings__BrewFloorOwner";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("brewfloor-file-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_connection_in_a_file_is_the_same_as_one_that_is_typed()
    {
        var (app, owner) = ("Host=db;Username=app;Password=a", "Host=db;Username=owner;Password=b");

        var given = AddressIn(($"{Application}_FILE", Written("app", app)), ($"{Owner}_FILE", Written("owner", owner)));

        Assert.Equal(AddressIn((Application, app), (Owner, owner)), given);
        Assert.Equal(new DatabaseAddress.Given(new(owner, app)), given);
        Assert.IsType<DatabaseAddress.InFolder>(AddressIn());
    }

    [Fact]
    public void A_file_that_is_not_there_or_a_variable_beside_it_stops_the_start_with_a_sentence_without_the_secret()
    {
        var missing = Refused(($"{Application}_FILE", Path.Combine(_folder.FullName, "none")));
        Assert.Contains("cannot be read", missing, StringComparison.Ordinal);

        var both = Refused((Application, "Host=db;Password=hush"), ($"{Application}_FILE", Written("app", "Host=db")));
        Assert.Contains("both set", both, StringComparison.Ordinal);
        Assert.DoesNotContain("hush", both, StringComparison.Ordinal);
    }

    private string Written(string name, string text)
    {
        var file = Path.Combine(_folder.FullName, name);
        File.WriteAllText(file, text + "\n");
        return file;
    }

    private static string Refused(params (string, string)[] said) =>
        Assert.Throws<StartProblemException>(() => AddressIn(said)).Message;

    private static DatabaseAddress AddressIn(params (string Name, string Value)[] said) =>
        DatabaseSetup.AddressIn(
            new ConfigurationBuilder()
                .AddInMemoryCollection(
                    said.Select(one =>
                        KeyValuePair.Create(one.Name.Replace("__", ":", StringComparison.Ordinal), (string?)one.Value)
                    )
                )
                .Build(),
            folder: "/nowhere"
        );
}
