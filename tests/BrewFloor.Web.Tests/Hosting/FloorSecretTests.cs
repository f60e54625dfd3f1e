using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Tests.Hosting;

public sealed class FloorSecretTests : IDisposable
{
    private const string Typed = "thirty-two characters, or more...";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("brewfloor-secret-");

    private string File => Path.Combine(_folder.FullName, "secret");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_folder_gets_one_secret_and_keeps_it_from_everybody_else()
    {
        var first = Of().Key.ToArray();

        Assert.Equal(first, Of().Key.ToArray());
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, System.IO.File.GetUnixFileMode(File));
        Assert.Single(_folder.GetFiles());
    }

    [Fact]
    public async Task Two_starts_at_once_end_with_one_secret()
    {
        var keys = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Task.Run(() => Of().Key.ToArray())));

        Assert.All(keys, key => Assert.Equal(keys[0], key));
        Assert.Single(_folder.GetFiles());
    }

    [Fact]
    public void One_that_is_typed_is_the_same_as_one_in_a_file_and_leaves_the_folder_alone()
    {
        var elsewhere = Path.Combine(_folder.CreateSubdirectory("elsewhere").FullName, "secret");
        System.IO.File.WriteAllText(elsewhere, Typed + "\n");

        Assert.Equal(
            Of((FloorSecret.Variable, Typed)).Key.ToArray(),
            Of((FloorSecret.FileVariable, elsewhere)).Key.ToArray()
        );
        Assert.Empty(_folder.GetFiles());
    }

    [Fact]
    public void One_that_is_too_short_or_not_there_stops_the_start_with_a_sentence()
    {
        Assert.Contains("openssl rand", Refused((FloorSecret.Variable, "short")), StringComparison.Ordinal);
        Assert.Contains("cannot be read", Refused((FloorSecret.FileVariable, File)), StringComparison.Ordinal);
        System.IO.File.WriteAllText(File, "");
        Assert.Contains(File, Refused(), StringComparison.Ordinal);
    }

    private string Refused(params (string, string)[] environment) =>
        Assert.Throws<StartProblemException>(() => Of(environment)).Message;

    private FloorSecret Of(params (string Name, string Value)[] environment) =>
        FloorSecret.Of(
            _folder.FullName,
            name => Array.Find(environment, one => name.Equals(one.Name, StringComparison.Ordinal)).Value
        );
}
