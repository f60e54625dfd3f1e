using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;

namespace BrewFloor.Store.Tests.PrivateServer;

public sealed class ApplicationRoleTests(TestServer server)
{
    [Fact]
    public async Task With_one_login_for_both_the_app_works_as_the_application_role()
    {
        var database = await server.NewDatabaseAsync(FolderUnderTest.Stop);

        Assert.Equal(
            "brewfloor_app",
            await FolderUnderTest.AskAsync(database.Application, "SELECT current_user::text")
        );
        Assert.NotEqual("brewfloor_app", await FolderUnderTest.AskAsync(database.Owner, "SELECT current_user::text"));
    }

    [Fact]
    public async Task A_login_that_may_not_make_roles_is_told_what_to_run_and_then_works()
    {
        var database = await server.NewDatabaseAsync(FolderUnderTest.Stop);
        var login = $"club_{Guid.CreateVersion7():N}";
        await FolderUnderTest.AskAsync(database.Owner, $"CREATE ROLE {login} LOGIN PASSWORD 'x'");
        var asClub = new NpgsqlConnectionStringBuilder(database.Owner) { Username = login, Password = "x" };
        var club = Connections.OfOneLogin(asClub.ConnectionString);

        var problem = await Assert.ThrowsAsync<PrivateServerProblem>(() =>
            ApplicationRole.EnsureAsync(club, FolderUnderTest.Stop)
        );
        Assert.Equal("application-role", problem.Code);
        Assert.Contains($"GRANT brewfloor_app TO \"{login}\"", problem.Message, StringComparison.Ordinal);

        await FolderUnderTest.AskAsync(database.Owner, $"GRANT brewfloor_app TO {login}");
        await ApplicationRole.EnsureAsync(club, FolderUnderTest.Stop);
        Assert.Equal("brewfloor_app", await FolderUnderTest.AskAsync(club.Application, "SELECT current_user::text"));
        await FolderUnderTest.AskAsync(database.Owner, $"DROP ROLE {login}");
    }
}
