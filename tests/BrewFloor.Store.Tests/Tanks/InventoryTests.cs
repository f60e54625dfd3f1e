using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Tests.Postgres;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;
using EntryJson = BrewFloor.Store.Log.EntryJson;

namespace BrewFloor.Store.Tests.Tanks;

public sealed class InventoryTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task A_tank_comes_back_as_it_was_added()
    {
        var tank = ATank(NewId(), "s1", 60) with { Name = "Left of the door" };
        await _floor.Inventory.AddAsync(tank, Ben, Stop);

        var view = await _floor.Reader.TankAsync("S1", Stop);
        var (stored, _) = Assert.Single(view!.Floor.Tanks);
        Assert.Equal(("S1", "Left of the door", 60), (stored.Code, stored.Name, stored.Total.Liters));
        Assert.NotNull(await _floor.Reader.TankAsync("s1", Stop));
    }

    [Fact]
    public async Task Ports_come_back_as_they_were_written_down_and_so_does_what_is_on_them()
    {
        Port manway = new(1, "Manway", PortPlace.Lid)
        {
            Clamp = Clamp.ThreeInch,
            Flange = Length.FromMillimeters(90.9),
            FromMiddle = Length.FromMillimeters(0),
        };
        Port sample = new(7, "Sample", PortPlace.Side)
        {
            Bore = Length.FromMillimeters(35),
            Clamp = Clamp.Dn40,
            Height = Length.FromMillimeters(40),
            Around = Angle.FromDegrees(270),
        };
        var tank = ATank(NewId(), "s2", 60) with { Ports = [manway, sample] };
        await _floor.Inventory.AddAsync(tank, Ben, Stop);
        Fitting well = new(1, Part.Thermowell) { Clamp = Clamp.OneInch, Through = new(Clamp.ThreeInch, Clamp.OneInch) };
        var sent = await _floor.SendAsync(
            Ann,
            new PartsSeen(tank.Id, [well, new(7, Part.SampleValve)]) { Id = NewId(), At = Ago(3) },
            new Vented(tank.Id) { Id = NewId(), At = Ago(2) },
            new PartsTakenOff(tank.Id, "Sample valve")
            {
                Id = NewId(),
                At = Ago(1),
                Ports = [7],
            }
        );

        Assert.IsType<Store.Log.Appended.Stored>(sent);
        var (stored, state) = Assert.Single((await _floor.Reader.TankAsync("S2", Stop))!.Floor.Tanks);
        Assert.Equal([manway, sample], stored.Ports);
        Assert.Equal([well], state.Fitted);
        Assert.Equal([new Fitting(7, Part.SampleValve)], state.LyingAbout);
    }

    [Fact]
    public void Entries_of_a_time_without_ports_are_read_as_they_were()
    {
        const string Old = """{"tank_id":"018f0000-0000-7000-8000-000000000003","parts":"Racking arm"}""";

        Assert.Empty(((PartsTakenOff)EntryJson.Read("parts-off", 1, Old)).Ports);
        Assert.Empty(((Refitted)EntryJson.Read("refitted", 1, Old)).Fitted);
        Assert.Equal(Old, EntryJson.PayloadOf(EntryJson.Read("refitted", 1, Old))); // and hashed as they were
    }

    [Fact]
    public async Task A_code_is_never_used_twice_not_even_in_small_letters()
    {
        await RetireAsync();

        var refused = Assert.IsType<Edited.Refused>(
            await _floor.Inventory.AddAsync(ATank(NewId(), "k3", 60), Ann, Stop)
        );

        Assert.Equal(["code-taken"], refused.Objections.Select(o => o.Code));
    }

    [Fact]
    public async Task An_edit_of_a_page_that_is_out_of_date_is_said_to_be()
    {
        var tank = await ReadAsync();
        Assert.Equal(new Edited.Done(2), await _floor.Inventory.EditAsync(tank with { Name = "one" }, Ben, Stop));

        Assert.IsType<Edited.Overtaken>(await _floor.Inventory.EditAsync(tank with { Name = "two" }, Ben, Stop));

        var history = await _floor.Inventory.HistoryAsync(K3, Stop);
        Assert.Equal(["one", null], history.Select(c => c.Thing.Name));
        Assert.Equal([Ben.Id, Ann.Id], history.Select(c => c.By));
    }

    [Fact]
    public async Task Of_eight_who_edit_at_once_one_is_done()
    {
        var tank = await ReadAsync();

        var all = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(i => _floor.Inventory.EditAsync(tank with { Name = $"{i}" }, Ben, Stop))
        );

        Assert.Single(all.OfType<Edited.Done>());
    }

    [Fact]
    public async Task A_full_tank_is_not_made_smaller_nor_retired_and_a_helper_edits_none()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, NewId()))).Stored();
        var tank = await ReadAsync();

        Assert.Contains(
            "smaller-than-contents",
            await CodesAsync(tank with { Strapping = ATank(K3, "K3", 800).Strapping, Working = Litres(700) })
        );
        Assert.Contains("retiring-full", await CodesAsync(tank with { RetiredOn = new(2026, 3, 2) }));
        var helper = await _floor.Inventory.EditAsync(tank with { Name = "mine" }, Cem, Stop);
        Assert.Equal(["may-not-edit"], Assert.IsType<Edited.Refused>(helper).Objections.Select(o => o.Code));
    }

    [Fact]
    public async Task An_edit_waits_for_whoever_writes_about_the_tank()
    {
        var tank = await ReadAsync();
        await using var held = await Holder.OfTankAsync(_floor.Database, K3);

        var edit = _floor.Inventory.EditAsync(tank with { Name = "Left" }, Ben, Stop);
        Assert.Equal(1, await _floor.WaitingAsync(1));
        Assert.IsType<Edited.Done>( // another tank's doesn't
            await _floor.Inventory.EditAsync(
                (await _floor.Reader.TankAsync("P2", Stop))!.Floor.Tanks[0].Thing,
                Ben,
                Stop
            )
        );

        await held.LetGoAsync();
        Assert.IsType<Edited.Done>(await edit);
    }

    [Fact]
    public async Task Without_the_index_a_code_would_be_used_twice()
    {
        await _floor.AsOwnerAsync("DROP INDEX ix_tanks_code");

        Assert.IsType<Edited.Done>(await _floor.Inventory.AddAsync(ATank(NewId(), "k3", 60), Ann, Stop));
    }

    [Fact]
    public async Task A_new_geometry_leaves_what_was_read_by_level_as_it_was_read()
    {
        var batch = NewId();
        (await _floor.InsistAsync(Ann, Fill(K3, batch, litres: 600, at: Ago(2)))).Stored();
        var tank = await ReadAsync();
        var level = Length.FromMillimeters(750);
        LevelMeasured read = new(K3, tank.Strapping.VolumeAt(level).Value)
        {
            Id = NewId(),
            BatchId = batch,
            Level = level,
            TankVersion = tank.Version,
        };
        (await _floor.InsistAsync(Ann, read)).Stored();
        var before = (await _floor.TankAsync(K3)).Contents.Volume!.Value.Liters;

        var larger = tank with { Strapping = ATank(K3, "K3", 1500).Strapping };
        Assert.IsType<Edited.Done>(await _floor.Inventory.EditAsync(larger, Ann, Stop));
        await using var owner = StoreSetup.DataSource(_floor.Connections.Owner);
        await Store.Log.Refolding.AllAsync(owner, Stop);

        Assert.Equal(before, (await _floor.TankAsync(K3)).Contents.Volume!.Value.Liters);
        Assert.NotEqual(before, larger.Strapping.VolumeAt(level).Value.Liters); // read anew, it would be another volume
    }

    [Fact]
    public async Task A_retired_tank_takes_notes_only()
    {
        await RetireAsync();

        Assert.Equal(["tank-retired"], (await _floor.SendAsync(new Opened(K3) { Id = NewId() })).Codes());
        (await _floor.SendAsync(Note(K3, "sold"))).Stored();
    }

    [Fact]
    public async Task Every_way_to_measure_a_tank_is_stored()
    {
        var shape = Brewing.Tanks.VesselShape.Measured(
            Length.FromMillimeters(1000),
            Length.FromMillimeters(1200),
            new Brewing.Tanks.ConeBottom(Angle.FromDegrees(60)),
            Length.FromMillimeters(50),
            new Brewing.Tanks.DishedHead(Brewing.Tanks.DishKind.Kloepper)
        );
        await _floor.Inventory.AddAsync(ATank(NewId(), "P9", 500) with { Strapping = shape.Value }, Ann, Stop);

        var (stored, _) = (await _floor.Reader.TankAsync("P9", Stop))!.Floor.Tanks[0];
        Assert.Equal(shape.Value.Total.Liters, stored.Total.Liters, 9);
        Assert.IsType<Brewing.Tanks.VesselShape>(stored.Strapping);
    }

    private async Task<Tank> ReadAsync() => (await _floor.Reader.TankAsync("K3", Stop))!.Floor.Tanks[0].Thing;

    private async Task<IEnumerable<string>> CodesAsync(Tank tank) =>
        Assert.IsType<Edited.Refused>(await _floor.Inventory.EditAsync(tank, Ann, Stop)).Objections.Select(o => o.Code);

    private async Task RetireAsync()
    {
        (await _floor.SendAsync(new Vented(K3) { Id = NewId() })).Stored();
        Assert.IsType<Edited.Done>(
            await _floor.Inventory.EditAsync(await ReadAsync() with { RetiredOn = new(2026, 3, 2) }, Ann, Stop)
        );
    }
}
