namespace BrewFloor.Store.Tests.Postgres;

/// <summary>What every test database is a copy of: migrated once per run, as in production.</summary>
internal static class Template
{
    /// <summary>Migrates the empty template as its owner.</summary>
    public static Task MigrateAsync(string owner, CancellationToken stop) =>
        Migrator.MigrateAsync(owner, "Europe/Berlin", stop);
}
