using BrewFloor.Domain.Log;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>Finds ids by what people call things: a tank's code (without case), the number of a batch, a culture or an item.</summary>
public sealed class SubjectNames(NpgsqlDataSource database)
{
    /// <summary>One round trip for all; what isn't there is left out.</summary>
    public async Task<Named> FindAsync(
        IEnumerable<string> tanks,
        IEnumerable<int> batches,
        IEnumerable<int> cultures,
        IEnumerable<int> items,
        CancellationToken stop
    )
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        object codes = tanks.Select(Code).Distinct(StringComparer.Ordinal).ToArray(); // one value, not one each
        batch.Add("SELECT id, code FROM tanks WHERE code = ANY($1)", codes);
        batch.Add("SELECT id, number FROM batches WHERE number = ANY($1)", batches.Distinct().ToArray());
        batch.Add("SELECT id, number FROM cultures WHERE number = ANY($1)", cultures.Distinct().ToArray());
        batch.Add("SELECT id, number FROM items WHERE number = ANY($1)", items.Distinct().ToArray());
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var found = new Named();
        while (await reader.ReadAsync(stop))
        {
            found.Tanks.Add(reader.GetString(1), reader.GetGuid(0));
        }

        foreach (var numbers in (Dictionary<int, Guid>[])[found.Batches, found.Cultures, found.Items])
        {
            await reader.NextResultAsync(stop);
            while (await reader.ReadAsync(stop))
            {
                numbers.Add(reader.GetInt32(1), reader.GetGuid(0));
            }
        }

        return found;
    }

    internal static string Code(string typed) => typed.Trim().ToUpperInvariant();
}

/// <summary>What was found, by code or number.</summary>
public sealed class Named
{
    internal Dictionary<string, Guid> Tanks { get; } = new(StringComparer.Ordinal);

    internal Dictionary<int, Guid> Batches { get; } = [];

    internal Dictionary<int, Guid> Cultures { get; } = [];

    internal Dictionary<int, Guid> Items { get; } = [];

    /// <returns>Null: no tank has this code.</returns>
    public Guid? Tank(string code) => Tanks.TryGetValue(SubjectNames.Code(code), out var id) ? id : null;

    /// <returns>Null: there is no such batch, culture or item.</returns>
    public Guid? Numbered(SubjectKind kind, int number) => Of(kind).TryGetValue(number, out var id) ? id : null;

    private Dictionary<int, Guid> Of(SubjectKind kind) =>
        kind switch
        {
            SubjectKind.Batch => Batches,
            SubjectKind.Culture => Cultures,
            _ => Items,
        };
}
