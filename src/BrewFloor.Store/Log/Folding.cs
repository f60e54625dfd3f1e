using BrewFloor.Domain.Log;
using BrewFloor.Store.Jobs;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>What the request changed on the floor: states, what was handed over, snapshots, occupancies, jobs.</summary>
internal sealed class Folding(Session session)
{
    internal const string States = """
        INSERT INTO states (subject_id, kind, state, fold_version, entries, last_at, next_edge)
        SELECT * FROM unnest($1::uuid[], $2::text[], $3::jsonb[], $4::int[], $5::int[], $6::timestamptz[], $7::timestamptz[])
        ON CONFLICT (subject_id) DO UPDATE SET state = excluded.state, fold_version = excluded.fold_version,
            entries = excluded.entries, last_at = excluded.last_at, next_edge = excluded.next_edge
        """;

    internal const string HandedBefore =
        "UPDATE handed_over SET until = currval('entry_seq') WHERE entry_id = $1 AND until IS NULL";

    internal const string HandedNow = """
        INSERT INTO handed_over (entry_id, place, taker_id, giver_id, since, kind, value)
        VALUES ($1, $2, $3, $4, currval('entry_seq'), $5, $6)
        """;

    private const string Snapshot = """
        INSERT INTO snapshots (subject_id, at, seq, made, fold_version, entries, state)
        SELECT $1, $2, CASE WHEN $3 < $4 THEN $3 ELSE e.seq END, currval('entry_seq'), $5, $6, $7
        FROM entries e WHERE e.id = $8 ON CONFLICT DO NOTHING
        """;

    private readonly Replay _replay = session.Replay;
    private readonly Subject[] _touched = [.. session.Replay.Touched];

    public void Write(NpgsqlBatch batch)
    {
        if (_touched.Length > 0)
        {
            WriteStates(batch);
        }

        WriteHanded(batch);
        WriteSnapshots(batch);
        WriteOccupancies(batch);
        foreach (var (by, later, anew) in _replay.HeardAnew)
        {
            foreach (var objection in anew)
            {
                batch.Add(
                    "INSERT INTO seen_afterwards (entry_id, code, by, objection) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING",
                    later.Id,
                    objection.Code,
                    by,
                    Statements.Jsonb(FloorJson.Of(objection))
                );
            }
        }
    }

    private void WriteStates(NpgsqlBatch batch)
    {
        var opened = session.Opened;
        var jobs = new JobKeeping(opened.Jobs, opened.Recorded);
        jobs.Look(opened.Things, opened.Rules, _replay.States, _touched);
        batch.Add(
            States,
            _touched.Select(s => s.Id).ToArray(),
            _touched.Select(s => SubjectKinds.NameOf(s.Kind)).ToArray(),
            Statements.Jsonb([.. _touched.Select(s => FloorJson.Of(_replay.States[s]))]),
            _touched.Select(_ => StateRow.CurrentFold).ToArray(),
            _touched.Select(s => _replay.Counts.GetValueOrDefault(s)).ToArray(),
            Statements.Instants(_touched.Select(LastAt)),
            Statements.Instants(_touched.Select(s => jobs.NextEdges[s]))
        );
        var struck = session.Entries.Select(e => e.Entry).OfType<Struck>().SelectMany(s => s.Entries).ToArray();
        jobs.Write(batch, struck, reopens: true);
    }

    private DateTimeOffset? LastAt(Subject subject)
    {
        var here = session
            .Steps.Where(s => s.Now is { } now && now.Entry.Subjects.Contains(subject))
            .Select(s => (DateTimeOffset?)s.At);
        var before = session.Timelines is { } timelines
            ? timelines.LastBefore.TryGetValue(subject, out var last)
                ? last
                : (DateTimeOffset?)null
            : session.Opened.Kept.GetValueOrDefault(subject)?.LastAt;
        return here.Append(before).Max() ?? session.Opened.Recorded;
    }

    private void WriteHanded(NpgsqlBatch batch)
    {
        foreach (var (entryId, values) in _replay.HandedAnew)
        {
            batch.Add(HandedBefore, entryId);
            foreach (var (place, handed) in values.Index())
            {
                batch.Add(
                    HandedNow,
                    entryId,
                    place,
                    handed.Taker.Id,
                    handed.Value.Giver.Id,
                    HandedOverKinds.NameOf(handed.Value),
                    Statements.Jsonb(FloorJson.Of(handed.Value))
                );
            }
        }
    }

    private void WriteSnapshots(NpgsqlBatch batch)
    {
        if (session.IsLate)
        {
            Guid[] ids = [.. _touched.Select(s => s.Id)];
            batch.Add("DELETE FROM snapshots WHERE subject_id = ANY($1) AND at >= $2", ids, session.From);
        }

        foreach (var (subject, line, entries, state) in _replay.Snapshots.Where(s => _touched.Contains(s.Subject)))
        {
            batch.Add(
                Snapshot,
                subject.Id,
                line.Entry.At,
                line.Seq,
                Hearing.NotYetDrawn,
                StateRow.CurrentFold,
                entries,
                Statements.Jsonb(FloorJson.Of(state)),
                line.Entry.Id
            );
        }
    }

    private void WriteOccupancies(NpgsqlBatch batch)
    {
        Guid[] tanks = [.. _touched.Where(s => s.Kind is SubjectKind.Tank).Select(s => s.Id)];
        if (session.IsLate)
        {
            batch.Add(
                "DELETE FROM tank_occupancies WHERE tank_id = ANY($1) AND lower(during) >= $2",
                tanks,
                session.From
            );
            batch.Add(
                "UPDATE tank_occupancies SET during = tstzrange(lower(during), NULL) WHERE tank_id = ANY($1) AND upper(during) >= $2",
                tanks,
                session.From
            );
        }

        foreach (var (tank, at, occupant) in _replay.Occupied.Where(o => tanks.Contains(o.TankId)))
        {
            batch.Add(
                "DELETE FROM tank_occupancies WHERE tank_id = $1 AND upper_inf(during) AND lower(during) = $2",
                tank,
                at
            );
            batch.Add(
                "UPDATE tank_occupancies SET during = tstzrange(lower(during), $2) WHERE tank_id = $1 AND upper_inf(during)",
                tank,
                at
            );
            if (occupant is { } present)
            {
                batch.Add(
                    "INSERT INTO tank_occupancies (tank_id, batch_id, during) VALUES ($1, $2, tstzrange($3, NULL))",
                    tank,
                    present,
                    at
                );
            }
        }
    }
}
