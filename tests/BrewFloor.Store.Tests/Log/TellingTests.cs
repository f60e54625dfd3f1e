using System.Text.RegularExpressions;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Batches;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>Whoever listens is told numbers and ids, nothing of what was written, and only what was committed.</summary>
public sealed class TellingTests(TestServer server) : IAsyncLifetime
{
    private static readonly Regex Told = new(
        "^(entry [0-9]+|jobs|thing (tank|batch|culture) [0-9a-f-]{36}|thing (house-rules|site) [0-9]+)$",
        RegexOptions.ExplicitCapture,
        TimeSpan.FromSeconds(1)
    );

    private readonly FreshFloor _floor = new(server);
    private readonly List<string> _heard = [];
    private NpgsqlConnection _listener = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await _floor.InitializeAsync();
        _listener = await _floor.Database.OpenConnectionAsync(Stop);
        await _listener.DoAsync("LISTEN floor", Stop);
        _listener.Notification += (_, told) => _heard.Add(told.Payload);
    }

    public async ValueTask DisposeAsync()
    {
        await _listener.DisposeAsync();
        await _floor.DisposeAsync();
    }

    [Fact]
    public async Task An_entry_is_told_by_its_number()
    {
        var stored = (await _floor.SendAsync(Note(K3, "a"))).Stored();

        Assert.Equal([$"entry {stored[0].Seq}"], await HeardAsync());
    }

    [Fact]
    public async Task Whatever_is_done_to_the_floor_no_more_than_numbers_and_ids_are_told()
    {
        await DoAllAsync();

        var heard = await HeardAsync();
        Assert.DoesNotContain(heard, told => !Told.IsMatch(told));
        Assert.Equal(
            ["entry", "jobs", "thing batch", "thing house-rules", "thing site", "thing tank"],
            heard
                .Select(told => Regex.Replace(told, " [0-9a-f-]+$", "", RegexOptions.None, TimeSpan.FromSeconds(1)))
                .Distinct()
                .Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task A_word_too_many_is_noticed()
    {
        await _floor.AsOwnerAsync(
            """
            CREATE FUNCTION tell() RETURNS trigger LANGUAGE plpgsql AS $$
            BEGIN PERFORM pg_notify('floor', 'entry ' || NEW.seq || ' ' || NEW.note); RETURN NEW; END $$;
            CREATE TRIGGER tr_tell BEFORE INSERT ON entries FOR EACH ROW EXECUTE FUNCTION tell();
            """
        );

        var stored = (await _floor.SendAsync(Note(K3, "valve drips"))).Stored();

        Assert.Equal([$"entry {stored[0].Seq} valve drips"], (await HeardAsync()).Where(told => !Told.IsMatch(told)));
    }

    [Fact]
    public async Task What_was_refused_or_rolled_back_is_not_told()
    {
        Assert.Equal(["unknown-tank"], (await _floor.SendAsync(Note(K3, "fine"), Note(NewId(), "lost"))).Codes());
        await using (var undone = await Holder.OfAsync(_floor.Database, "SELECT pg_notify('floor', 'entry 7')"))
        {
            await undone.LetGoAsync();
        }

        Assert.Empty(await HeardAsync());
    }

    private async Task DoAllAsync()
    {
        var batch = NewId();
        (await _floor.InsistAsync(Ann, Fill(K3, batch, at: Ago(3)))).Stored();
        (await _floor.InsistAsync(Ann, new Emptied(K3, batch, Litres(1)) { Id = NewId(), At = Ago(2) })).Stored();
        var job = (await _floor.Reader.JobsAsync(Stop)).Jobs.First(j => j.Job.Rule is WashSoiledTank.Rule);
        await _floor.Jobs.TakeAsync(job.Id, Ann.Id, Stop);
        await _floor.Jobs.PutOffAsync(job.Id, Ago(-5), "No caustic in the house", Ann.Id, Stop);
        await _floor.Jobs.SweepAsync(Ago(-25), Stop);
        var floor = (await _floor.Reader.InventoryAsync(Stop)).Floor;
        await _floor.Inventory.EditAsync(floor.Tank(P2).Thing with { Name = "By the door" }, Ann, Stop);
        var beer = (await _floor.Reader.BatchAsync(1, Stop))!.Floor.Batches[0].Thing;
        await new BatchBook(_floor.Database, _floor.Rules).EditAsync(beer with { Name = "Winter Ale" }, Ann, Stop);
        HouseKeeping house = new(_floor.Database, _floor.Rules);
        await house.ChangeAsync(await house.RulesAsync(Stop), Ann.Id, Stop);
        await house.ChangeAsync(await house.SiteAsync(Stop) with { Name = "The Cellar" }, Stop);
    }

    // What was told before this query's answer is heard before it.
    private async Task<List<string>> HeardAsync()
    {
        await _listener.DoAsync("SELECT 1", Stop);
        return _heard;
    }
}
