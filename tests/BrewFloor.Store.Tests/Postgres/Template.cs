namespace BrewFloor.Store.Tests.Postgres;

/// <summary>What every test database is a copy of: migrated once per run, as in production.</summary>
internal static class Template
{
    /// <summary>Migrates the empty template as its owner. There are no migrations yet, so it stays empty.</summary>
    public static Task MigrateAsync(string owner, CancellationToken stop) => Task.CompletedTask;
}
