using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Items;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Tests.Postgres;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Items;

public sealed class ItemBookTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private ItemBook Book => new(_floor.Database, _floor.Rules);

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task What_is_counted_for_the_first_time_gets_a_number_and_is_found_by_it()
    {
        var gaskets = await CountedAsync("Gasket", StockAmount.Of(9));
        await CountedAsync("Caustic", StockAmount.Of(Mass.FromKilograms(12)));

        Assert.Equal(1, gaskets.Number);
        var names = await new SubjectNames(_floor.Database).FindAsync([], [], [], [2], Stop);
        Assert.NotNull(names.Numbered(SubjectKind.Item, 2));
        var kept = (await _floor.Reader.ItemsAsync(Stop)).Floor.Items.Select(item => item.Thing.Name);
        Assert.Equal(["Caustic", "Gasket"], kept);
    }

    [Fact]
    public async Task A_level_set_above_what_is_left_makes_the_job_and_one_below_ends_it()
    {
        var gaskets = await CountedAsync("Gasket", StockAmount.Of(9));
        Assert.Empty(await DueAsync());

        await Book.EditAsync(gaskets with { ReorderAt = StockAmount.Of(10) }, Ben, Stop);
        Assert.Equal(BuyMore.Rule, Assert.Single(await DueAsync()).Job.Rule);

        await Book.EditAsync(gaskets with { Version = 2, ReorderAt = StockAmount.Of(3) }, Ben, Stop);
        Assert.Empty(await DueAsync());
    }

    [Fact]
    public async Task An_edit_never_changes_number_or_measure()
    {
        var gaskets = await CountedAsync("Gasket", StockAmount.Of(9));

        var wanted = gaskets with { Number = 77, Measure = StockMeasure.Mass, Name = "Gasket, 64 mm" };
        Assert.Equal(new Edited.Done(2), await Book.EditAsync(wanted, Ben, Stop));

        var stored = Assert.Single((await _floor.Reader.ItemsAsync(Stop)).Floor.Items).Thing;
        Assert.Equal((1, StockMeasure.Pieces, "Gasket, 64 mm"), (stored.Number, stored.Measure, stored.Name));
    }

    [Fact]
    public async Task Of_two_who_edit_one_item_the_second_is_told_and_a_helper_edits_none()
    {
        var gaskets = await CountedAsync("Gasket", StockAmount.Of(9));
        await Book.EditAsync(gaskets with { Name = "one" }, Ben, Stop);

        Assert.IsType<Edited.Overtaken>(await Book.EditAsync(gaskets with { Name = "two" }, Ann, Stop));
        Assert.IsType<Edited.Refused>(await Book.EditAsync(gaskets with { Version = 2 }, Cem, Stop));
    }

    [Fact]
    public async Task Two_who_sanitize_at_once_both_take_theirs()
    {
        var acid = await CountedAsync("Peracetic acid", Ml(1000));
        Guid[] tanks = [NewId(), NewId()];
        await _floor.Inventory.AddAsync(ATank(tanks[0], "S1", 100), Ann, Stop);
        await _floor.Inventory.AddAsync(ATank(tanks[1], "S2", 100), Ann, Stop);

        var sent = tanks.Select(tank =>
            _floor.InsistAsync(
                Ann,
                new Sanitized(tank, Agent.Peracetic, Way.Soak) { Id = NewId(), Used = [new(acid.Id, Ml(100))] }
            )
        );
        Assert.All(await Task.WhenAll(sent), appended => appended.Stored());

        var left = (await _floor.Reader.ItemAsync(acid.Number, Stop))!.Floor.Item(acid.Id).State;
        Assert.Equal(Ml(800), left.Amount);
    }

    [Fact]
    public async Task A_struck_use_gives_back_what_it_took()
    {
        var acid = await CountedAsync("Peracetic acid", Ml(1000));
        ItemUsed used = new(acid.Id, Ml(300)) { Id = NewId() };
        (await _floor.SendAsync(used)).Stored();

        (await _floor.SendAsync(new Struck([used.Id], "Another canister") { Id = NewId() })).Stored();

        var left = (await _floor.Reader.ItemAsync(acid.Number, Stop))!.Floor.Item(acid.Id).State;
        Assert.Equal(Ml(1000), left.Amount);
    }

    private static StockAmount Ml(double milliliters) => StockAmount.Of(Volume.FromMilliliters(milliliters));

    private async Task<IReadOnlyList<Store.Jobs.OpenJob>> DueAsync() => (await _floor.Reader.ItemsAsync(Stop)).Jobs;

    private async Task<Item> CountedAsync(string name, StockAmount amount)
    {
        var id = NewId();
        NewItem brought = new(id, name, ItemKind.Part, amount.Measure);
        (await _floor.SendAsync(new ItemCounted(id, amount) { Id = NewId(), NewItem = brought })).Stored();
        return (await _floor.Reader.ItemsAsync(Stop)).Floor.Item(id).Thing;
    }
}
