using BrewFloor.Domain;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.House;

/// <summary>How a caution fared the last times it was heard.</summary>
/// <param name="Heard">At most <see cref="Times"/>.</param>
/// <param name="Count">How many of those entries still stand as they were written: it was waved through, and nothing came of it.</param>
public sealed record WavedThrough(string Code, int Heard, int Count)
{
    public const int Times = 10;
    private const int Enough = 9;

    /// <summary>It stops nobody: the club may want to switch it off.</summary>
    public bool IsProposedOff => Heard >= Times && Count >= Enough;
}

/// <summary>What became of the cautions that entries were written over. Worked out of the log; nothing is kept.</summary>
public sealed class Cautions(NpgsqlDataSource database, RulesOnHand rules)
{
    // An entry that was struck or corrected later doesn't stand as written: the caution had a point.
    private const string LastTimes = """
        SELECT code, count(*)::int, (count(*) FILTER (WHERE stands))::int
        FROM (
            SELECT o.value ->> 'code' AS code,
                EXISTS (
                    SELECT FROM entry_subjects s WHERE s.words_id = e.id AND s.until IS NULL
                        AND (e.kind <> 'corrected' OR s.entry_id <> e.id)
                ) AS stands,
                row_number() OVER (PARTITION BY o.value ->> 'code' ORDER BY e.seq DESC) AS nth
            FROM entries e CROSS JOIN LATERAL jsonb_array_elements(e.objections) o
            WHERE o.value ->> 'level' = 'caution'
        ) heard
        WHERE nth <= $1 GROUP BY code ORDER BY code
        """;

    /// <summary>Every caution that was ever written over and isn't switched off.</summary>
    public async Task<Listed<WavedThrough>> WavedThroughAsync(CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(RulesOnHand.Question, rules.Version);
        batch.Add(LastTimes, WavedThrough.Times);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        await reader.ReadAsync(stop);
        var silent = rules.Read(reader).SilentCautions;
        await reader.NextResultAsync(stop);
        var cautions = new List<WavedThrough>();
        while (await reader.ReadAsync(stop))
        {
            cautions.Add(new(reader.GetString(0), reader.GetInt32(1), reader.GetInt32(2)));
        }

        return [.. cautions.Where(caution => !silent.Contains(caution.Code, StringComparer.Ordinal))];
    }
}
