using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Tests.PrivateServer;

public sealed class DatabaseAddressTests
{
    private static readonly PrivateServerOptions Folder = new("/srv/club");

    [Theory]
    [InlineData(null)]
    [InlineData(" ")]
    public void Without_a_connection_the_database_is_private(string? nothing) =>
        Assert.Equal(new DatabaseAddress.InFolder(Folder), DatabaseAddress.Of(nothing, nothing, Folder));

    [Fact]
    public void With_an_owner_the_two_stay_apart() =>
        Assert.Equal(
            new DatabaseAddress.Given(new("Host=db;Username=owner", "Host=db;Username=app")),
            DatabaseAddress.Of("Host=db;Username=app", "Host=db;Username=owner", Folder)
        );

    [Fact]
    public void Without_an_owner_the_given_login_migrates_and_then_takes_the_application_role()
    {
        var given = Assert.IsType<DatabaseAddress.Given>(DatabaseAddress.Of("Host=db;Username=club", null, Folder));

        Assert.Equal("Host=db;Username=club", given.Connections.Owner);
        Assert.Contains("role=brewfloor_app", given.Connections.Application, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("postgres://club:secret@db/club", null, "connection-string")]
    [InlineData("Password=secret", null, "connection-string")] // no host
    [InlineData(null, "Host=db;Password=secret", "owner-alone")]
    public void What_cannot_be_meant_is_refused_without_repeating_the_password(string? app, string? owner, string code)
    {
        var problem = Assert.Throws<PrivateServerProblem>(() => DatabaseAddress.Of(app, owner, Folder));

        Assert.Equal(code, problem.Code);
        Assert.DoesNotContain("secret", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void PostgreSQLs_own_programs_get_the_same_connection()
    {
        var environment = LibpqEnvironment.Of(
            "Host=db1:5433,db2;Port=5434;Username=club;Password=s;SSL Mode=VerifyFull"
        );

        string[] names = ["PGHOST", "PGPORT", "PGUSER", "PGPASSWORD", "PGDATABASE", "PGSSLMODE"];
        Assert.Equal(
            ["db1,db2", "5433,5434", "club", "s", "club", "verify-full"],
            names.Select(name => environment[name])
        );
    }
}
