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

    /// <summary>A file that one process holds at a time and deletes in the end; for who crashed the system lets go, and the empty file stays.</summary>
    /// <returns>Null: another has it.</returns>
    /// <remarks>To move a file into place "unless there is one" asks first and moves then: two may both be told there is none.</remarks>
    public static FileStream? TakeTurn(string path)
    {
        try
        {
            return new(
                path,
                new FileStreamOptions
                {
                    Mode = FileMode.OpenOrCreate,
                    Access = FileAccess.ReadWrite,
                    Share = FileShare.None,
                    Options = FileOptions.DeleteOnClose,
                    UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
                }
            );
        }
        catch (IOException e)
            when (e is not (DirectoryNotFoundException or FileNotFoundException or PathTooLongException))
        {
            return null;
        }
    }
}
