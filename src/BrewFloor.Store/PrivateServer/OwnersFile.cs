namespace BrewFloor.Store.PrivateServer;

/// <summary>Files that nobody reads but whom the app runs as.</summary>
public static class OwnersFile
{
    /// <summary>Made for writing; one that is there already is an <see cref="IOException"/>.</summary>
    public static FileStream Create(string path) =>
        new(
            path,
            new FileStreamOptions
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.Write,
                UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
            }
        );
}
