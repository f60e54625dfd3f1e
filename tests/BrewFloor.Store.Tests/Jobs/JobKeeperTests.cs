using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.House;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Tests.Postgres;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Jobs;

public sealed class JobKeeperTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);
    private readonly Guid _batch = NewId();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task Emptying_a_tank_makes_a_job_that_washing_resolves()
    {
        var emptied = await EmptyAsync(Ago(2));
        Assert.Equal(emptied.Id, (await WashingAsync())!.Job.Cause);

        (await _floor.InsistAsync(Ann, Washed())).Stored();

        Assert.Null(await WashingAsync());
        Assert.Equal("done", await HowAsync());
    }

    [Theory]
    [InlineData(TankType.ConicalFermenter, 1)]
    [InlineData(TankType.Bucket, 0)]
    public async Task Trub_is_asked_of_a_cone_and_of_no_bucket_whoever_looks_at_the_batch(TankType type, int jobs)
    {
        var tank = NewId();
        await _floor.Inventory.AddAsync(ATank(tank, "T9", 1200) with { Type = type }, Ann, Stop);
        (await _floor.InsistAsync(Ann, Fill(tank, _batch, at: Ago(3)))).Stored();
        Assert.Equal(jobs, await TrubJobsAsync());

        (await _floor.SendAsync(new Noted(Subject.Batch(_batch)) { Id = NewId(), Note = "Smells of hops" })).Stored();
        await _floor.Jobs.SweepAsync(Ago(-200), Stop);

        Assert.Equal(jobs, await TrubJobsAsync());
    }

    [Fact]
    public async Task A_cone_that_turns_out_to_be_a_bucket_asks_for_no_trub_any_more()
    {
        var tank = ATank(NewId(), "T9", 1200) with { Type = TankType.ConicalFermenter };
        await _floor.Inventory.AddAsync(tank, Ann, Stop);
        (await _floor.InsistAsync(Ann, Fill(tank.Id, _batch, at: Ago(3)))).Stored();
        Assert.Equal(1, await TrubJobsAsync());

        var edited = await _floor.Inventory.EditAsync(tank with { Type = TankType.Bucket, Version = 1 }, Ann, Stop);
        Assert.IsType<Edited.Done>(edited);
        await _floor.Jobs.SweepAsync(Ago(0), Stop);

        Assert.Equal(0, await TrubJobsAsync());
    }

    [Fact]
    public async Task A_struck_cause_resolves_its_job_as_struck()
    {
        var emptied = await EmptyAsync(Ago(2));

        (await _floor.SendAsync(new Struck([emptied.Id], "It was another tank") { Id = NewId() })).Stored();

        Assert.Null(await WashingAsync());
        Assert.Equal("struck", await HowAsync());
    }

    [Fact]
    public async Task A_struck_wash_opens_the_job_again()
    {
        await EmptyAsync(Ago(2));
        var washed = Washed();
        (await _floor.InsistAsync(Ann, washed)).Stored();
        Assert.Null(await WashingAsync());

        (await _floor.SendAsync(new Struck([washed.Id], "It was another tank") { Id = NewId() })).Stored();

        Assert.NotNull(await WashingAsync());
        Assert.Equal(1L, await CountAsync());
    }

    [Fact]
    public async Task A_sweep_sees_a_job_become_overdue_once()
    {
        await EmptyAsync(Ago(2));
        Assert.Equal(Urgency.Due, (await WashingAsync())!.Seen);
        var tomorrow = Ago(-25);

        Assert.True(await _floor.Jobs.SweepAsync(tomorrow, Stop) > 0);
        Assert.Equal(Urgency.Overdue, (await WashingAsync())!.Seen);
        Assert.Equal(0, await _floor.Jobs.SweepAsync(tomorrow, Stop));
    }

    [Fact]
    public async Task A_sweep_leaves_a_locked_tank_to_whoever_holds_it()
    {
        await EmptyAsync(Ago(2));
        await using var held = await Holder.OfAsync(_floor.Database, $"SELECT 1 FROM tanks {Locks.OfRow}");
        await held.DoAsync($"SELECT 1 FROM batches {Locks.OfRow}");

        Assert.Equal(0, await _floor.Jobs.SweepAsync(Ago(-25), Stop));
        await held.LetGoAsync();
        Assert.True(await _floor.Jobs.SweepAsync(Ago(-25), Stop) > 0);
    }

    [Fact]
    public async Task A_sweep_that_skips_nothing_waits_for_whoever_holds_a_tank()
    {
        await EmptyAsync(Ago(2));
        JobKeeper waiting = new(_floor.Database, _floor.Rules) { SweepLock = Locks.OfRow };
        await using var held = await Holder.OfTankAsync(_floor.Database, K3);

        var sweep = waiting.SweepAsync(Ago(-25), Stop);

        Assert.Equal(1, await _floor.WaitingAsync(1));
        await held.LetGoAsync();
        Assert.True(await sweep > 0);
    }

    [Fact]
    public async Task A_job_is_the_rule_the_subject_and_what_caused_it_and_stands_once()
    {
        await EmptyAsync(Ago(2));
        const string Twin = """
            INSERT INTO jobs SELECT (jsonb_populate_record(j, jsonb_build_object('id', gen_random_uuid()))).* FROM jobs j
            """;

        var refused = await Assert.ThrowsAsync<Npgsql.PostgresException>(() => _floor.AsOwnerAsync(Twin));

        await _floor.AsOwnerAsync($"DROP INDEX {refused.ConstraintName}; {Twin}"); // without it, the twin is there
        Assert.Equal(2L, await CountAsync());
    }

    [Fact]
    public async Task Many_sweeps_at_once_make_no_job_twice()
    {
        await EmptyAsync(Ago(2));
        var before = await CountAsync();

        await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => _floor.Jobs.SweepAsync(Ago(-25), Stop)));

        Assert.Equal(before, await CountAsync());
    }

    [Fact]
    public async Task What_people_say_of_a_job_is_kept_when_it_is_looked_at_again()
    {
        await EmptyAsync(Ago(2));
        var job = (await WashingAsync())!;
        Assert.True(await _floor.Jobs.TakeAsync(job.Id, Cem.Id, Stop));
        Assert.True(await _floor.Jobs.PutOffAsync(job.Id, Ago(-20), "No caustic in the house", Cem.Id, Stop));

        await _floor.Jobs.SweepAsync(Ago(-25), Stop);
        (await _floor.SendAsync(Note(K3, "still waits"))).Stored();

        var now = (await WashingAsync())!;
        Assert.Equal((Cem.Id, "No caustic in the house"), (now.TakenBy, now.PutOffReason));
        Assert.Equal(job.Id, now.Id);
    }

    [Fact]
    public async Task A_job_that_is_done_cannot_be_taken()
    {
        await EmptyAsync(Ago(2));
        var job = (await WashingAsync())!;
        (await _floor.InsistAsync(Ann, Washed())).Stored();

        Assert.False(await _floor.Jobs.TakeAsync(job.Id, Cem.Id, Stop));
        await Assert.ThrowsAsync<ArgumentException>(() => _floor.Jobs.PutOffAsync(job.Id, Ago(-20), " ", Cem.Id, Stop));
    }

    [Fact]
    public async Task Changed_house_rules_move_open_jobs_and_leave_closed_ones()
    {
        HouseKeeping house = new(_floor.Database, _floor.Rules);
        await EmptyAsync(Ago(2));
        var job = (await WashingAsync())!;
        await _floor.Jobs.TakeAsync(job.Id, Cem.Id, Stop);
        var rules = await house.RulesAsync(Stop);

        Assert.True(await house.ChangeAsync(rules with { WashOverdue = TimeSpan.FromHours(12) }, Ann.Id, Stop));
        Assert.False(await house.ChangeAsync(rules with { WashOverdue = TimeSpan.FromHours(6) }, Ann.Id, Stop));
        await _floor.Jobs.SweepAsync(Ago(0), Stop);

        var now = (await WashingAsync())!;
        Assert.Equal(job.Job.DueAt.AddHours(12), now.Job.OverdueAt);
        Assert.Equal(Cem.Id, now.TakenBy);

        (await _floor.InsistAsync(Ann, Washed())).Stored();
        rules = await house.RulesAsync(Stop);
        await house.ChangeAsync(rules with { WashOverdue = TimeSpan.FromHours(48) }, Ann.Id, Stop);
        await _floor.Jobs.SweepAsync(Ago(0), Stop);
        Assert.Null(await WashingAsync());
        Assert.Equal(2, (await house.RulesAsync(Stop)).Version - 1);
    }

    [Fact]
    public async Task Rules_changed_under_the_doors_hand_are_the_new_ones_for_the_next_entry()
    {
        HouseKeeping house = new(_floor.Database, new RulesOnHand()); // another instance of the app
        var rules = await house.RulesAsync(Stop);
        await house.ChangeAsync(rules with { HelperBackdates = TimeSpan.FromHours(1) }, Ann.Id, Stop);

        Assert.Equal(["too-far-back"], (await _floor.SendAsync(Cem, Note(K3, "late", Ago(2)))).Codes());
    }

    private async Task<Emptied> EmptyAsync(DateTimeOffset at)
    {
        Emptied emptied = new(K3, _batch, Litres(1)) { Id = NewId(), At = at };
        (await _floor.InsistAsync(Ann, Fill(K3, _batch, at: at.AddHours(-1)))).Stored();
        (await _floor.InsistAsync(Ann, emptied)).Stored();
        return emptied;
    }

    private static Domain.Cleaning.Washed Washed() =>
        new(K3, Domain.Cleaning.Agent.Alkaline, Domain.Cleaning.Way.SprayBall) { Id = NewId() };

    private async Task<OpenJob?> WashingAsync() =>
        (await _floor.Reader.JobsAsync(Stop)).Jobs.FirstOrDefault(j => j.Job.Rule is WashSoiledTank.Rule);

    private async Task<int> TrubJobsAsync() =>
        (await _floor.Reader.JobsAsync(Stop)).Jobs.Count(j => j.Job.Rule is DumpTrub.Rule);

    private Task<string?> HowAsync() =>
        _floor.AskAsync<string>("SELECT resolved FROM jobs WHERE rule = $1", WashSoiledTank.Rule);

    private Task<long> CountAsync() =>
        _floor.AskAsync<long>("SELECT count(*) FROM jobs WHERE rule = $1", WashSoiledTank.Rule);
}
