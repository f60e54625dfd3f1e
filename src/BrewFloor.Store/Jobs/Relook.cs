using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Jobs;

/// <summary>A thing was edited: what is due on it may be due at another time, or not at all.</summary>
internal sealed class Relook(NpgsqlConnection connection)
{
    // Its own lock isn't held: the next sweep takes it.
    private const string BeerIn = """
        UPDATE states SET next_edge = '-infinity' WHERE subject_id = (
            SELECT (state -> 'contents' ->> 'batch_id')::uuid FROM states WHERE subject_id = $1 AND kind = 'tank'
        )
        """;

    public async Task WriteAsync(
        Opened opened,
        IReadOnlyDictionary<Subject, State> states,
        Subject subject,
        CancellationToken stop
    )
    {
        var jobs = new JobKeeping(opened.Jobs, opened.Recorded);
        jobs.Look(opened.Things, opened.Rules, states, [subject]);
        await using var batch = connection.CreateBatch();
        batch.Add(
            "UPDATE states SET next_edge = $2 WHERE subject_id = $1",
            subject.Id,
            Statements.Instant(jobs.NextEdges[subject])
        );
        if (subject.Kind is SubjectKind.Tank)
        {
            batch.Add(BeerIn, subject.Id);
        }

        jobs.Write(batch, struck: [], reopens: false);
        await batch.ExecuteNonQueryAsync(stop);
    }
}
