using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Tanks;

/// <summary>
/// A tank that an undone import had added, and about which nothing stands in the log: added again under its code it is the same
/// tank, with everything about it said anew. So no code is ever another tank's, and none is lost to a slip.
/// </summary>
internal static class TakenBack
{
    private const string Those = """
        SELECT t.id, t.code, t.version FROM tanks t
        WHERE t.is_retired
            AND EXISTS (SELECT FROM spreadsheets s WHERE s.undone_at IS NOT NULL AND t.id = ANY(s.tanks))
            AND NOT EXISTS (
                SELECT FROM entry_subjects m JOIN entries e ON e.id = m.words_id
                WHERE m.subject_id = t.id AND m.until IS NULL AND e.kind <> 'struck')
        """;

    // Whoever took it back first has raised its version: the second finds nothing to renew.
    private const string Renew = """
        UPDATE tanks SET version = $2, thing = $3 WHERE id = $1 AND version = $2 - 1 AND is_retired
        """;

    /// <summary>By code.</summary>
    public static async Task<Dictionary<string, (Guid Id, int Version)>> ReadAsync(
        NpgsqlConnection connection,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        batch.Add(Those);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var found = new Dictionary<string, (Guid, int)>(StringComparer.Ordinal);
        while (await reader.ReadAsync(stop))
        {
            found.Add(reader.GetString(1), (reader.GetGuid(0), reader.GetInt32(2)));
        }

        return found;
    }

    /// <returns>False: it was taken back or changed meanwhile.</returns>
    public static async Task<bool> RenewAsync(NpgsqlConnection connection, Tank tank, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        batch.Add(Renew, tank.Id, tank.Version, Statements.Jsonb(FloorJson.Of(tank)));
        return await batch.ExecuteNonQueryAsync(stop) == 1;
    }
}
