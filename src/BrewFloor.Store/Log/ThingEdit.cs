using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Tanks;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>What becomes of a thing that somebody wants changed, once it is seen as it stands.</summary>
internal abstract record Renewal
{
    private Renewal() { }

    public sealed record No(Edited Why) : Renewal;

    /// <param name="Json">The thing as it will be stored.</param>
    /// <param name="Put">Lays it among the things its jobs are looked at with.</param>
    public sealed record Yes(int Version, string Json, Action<Things> Put) : Renewal;
}

/// <summary>Changes a thing under its subject's lock: the history keeps every version, and what is due on it is looked at anew.</summary>
internal sealed class ThingEdit(NpgsqlDataSource database, RulesOnHand rules)
{
    private const string History = """
        INSERT INTO thing_changes (kind, thing_id, version, at, by, thing) VALUES ($1, $2, $3, clock_timestamp(), $4, $5)
        """;

    /// <summary>Tanks, batches, cultures and items are changed by brewers, at a page; nothing: they may.</summary>
    public static Listed<Objection> MayNot(Author by) =>
        by.Role < Role.Brewer || by.IsToken ? [Objection.Impossible("may-not-edit")] : [];

    /// <summary>Of a thing that is judged by nothing else: who changes it, and whether what they read still stands.</summary>
    /// <param name="renewed">Asked only when nothing speaks against it.</param>
    public static Renewal Judge(Author by, int stands, int readAt, Func<Renewal> renewed) =>
        MayNot(by) is [_, ..] objections ? new Renewal.No(new Edited.Refused(objections))
        : stands != readAt ? new Renewal.No(new Edited.Overtaken())
        : renewed();

    /// <param name="renew">Judges the thing as it stands against the one that is wanted.</param>
    public async Task<Edited> WriteAsync(Subject subject, Func<Floor, Renewal> renew, Author by, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        var opened = await Opening.ReadAsync(connection, new([subject]), rules, Locks.Usual, stop);
        if (!opened.Things.Has(subject))
        {
            var code = $"unknown-{SubjectKinds.NameOf(subject.Kind)}";
            return new Edited.Refused([Objection.Impossible(code, new Number("id", subject.Id))]);
        }

        var states = opened.Kept.ToDictionary(k => k.Key, k => k.Value.State);
        switch (renew(opened.Things.Floor(opened.Rules, states, [subject])))
        {
            case Renewal.No no:
                return no.Why;
            case Renewal.Yes renewed:
                renewed.Put(opened.Things);
                await StoreAsync(connection, subject, renewed, by, stop);
                await new Relook(connection).WriteAsync(opened, states, subject, stop);
                await transaction.CommitAsync(stop);
                return new Edited.Done(renewed.Version);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>The line of the history that stands beside a thing's new version, and the news of it.</summary>
    public static void Record(NpgsqlBatch batch, Subject subject, int version, Author by, string json)
    {
        var kind = SubjectKinds.NameOf(subject.Kind);
        batch.Add(History, kind, subject.Id, version, by.Id, Statements.Jsonb(json));
        batch.Add("SELECT pg_notify('floor', $1)", $"thing {kind} {subject.Id}");
    }

    /// <summary>A thing's new version, with its line of the history; whoever calls holds the subject's lock.</summary>
    public static void Store(NpgsqlBatch batch, Subject subject, int version, Author by, string json)
    {
        var table = SubjectKinds.InLockOrder.First(kind => kind.Kind == subject.Kind).Table;
        batch.Add(
            $"UPDATE {table} SET version = $2, thing = $3 WHERE id = $1",
            subject.Id,
            version,
            Statements.Jsonb(json)
        );
        Record(batch, subject, version, by, json);
    }

    private static async Task StoreAsync(
        NpgsqlConnection connection,
        Subject subject,
        Renewal.Yes renewed,
        Author by,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        Store(batch, subject, renewed.Version, by, renewed.Json);
        await batch.ExecuteNonQueryAsync(stop);
    }
}
