using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Store.Yeast;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Yeast;

public sealed class CultureBookTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private CultureBook Book => new(_floor.Database, _floor.Rules);

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task A_date_read_wrongly_off_the_pack_is_put_right_and_its_job_moves()
    {
        var pack = await ReceivedAsync(new DateOnly(2026, 1, 1));
        Assert.NotNull(await StaleAsync());

        var right = pack with { UseBy = new DateOnly(2036, 1, 1), Strain = "House lager" };
        Assert.Equal(new Edited.Done(2), await Book.EditAsync(right with { Number = 99 }, Ben, Stop));

        var stored = Assert.Single((await _floor.Reader.CulturesAsync(Stop)).Floor.Cultures).Thing;
        Assert.Equal((pack.Number, "House lager", right.UseBy), (stored.Number, stored.Strain, stored.UseBy));
        Assert.NotEqual(Urgency.Overdue, await StaleAsync());
    }

    [Fact]
    public async Task Of_two_who_edit_one_pack_the_second_is_told()
    {
        var pack = await ReceivedAsync(useBy: null);
        await Book.EditAsync(pack with { Strain = "one" }, Ben, Stop);

        Assert.IsType<Edited.Overtaken>(await Book.EditAsync(pack with { Strain = "two" }, Ann, Stop));
    }

    [Fact]
    public async Task A_helper_edits_no_culture_and_nobody_edits_one_that_is_not_there()
    {
        var pack = await ReceivedAsync(useBy: null);

        Assert.Equal("may-not-edit", Code(await Book.EditAsync(pack with { Strain = "mine" }, Cem, Stop)));
        Assert.Equal("unknown-culture", Code(await Book.EditAsync(pack with { Id = NewId() }, Ann, Stop)));
    }

    private static string Code(Edited edited) => Assert.Single(Assert.IsType<Edited.Refused>(edited).Objections).Code;

    private async Task<Culture> ReceivedAsync(DateOnly? useBy)
    {
        NewCulture pack = new(NewId(), "House ale", CultureKind.LiquidPack) { UseBy = useBy };
        var amount = YeastAmount.Of(UnitsNet.Volume.FromMilliliters(1000));
        (await _floor.SendAsync(new CultureReceived(pack, amount) { Id = NewId() })).Stored();
        return Assert.Single((await _floor.Reader.CulturesAsync(Stop)).Floor.Cultures).Thing;
    }

    private async Task<Urgency?> StaleAsync() =>
        (await _floor.Reader.CulturesAsync(Stop))
            .Jobs.FirstOrDefault(job => job.Job.Rule is UseOrDiscardCulture.Rule)
            ?.Seen;
}
