using System.Net;
using System.Text.Json.Nodes;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Web.Tests.Api;

namespace BrewFloor.Web.Tests.Tanks;

/// <summary>Ports are written down as part of the tank; parts go on by entries, and what does not fit is refused with both diameters.</summary>
public sealed class PortsPageTests(FloorApp app) : IClassFixture<FloorApp>
{
    private static readonly (string, string)[] Manway =
    [
        ("port.1.name", "Manway"),
        ("port.1.place", "Lid"),
        ("port.1.clamp", "ThreeInch"),
    ];

    private async Task<Tank> ThingAsync(string code) =>
        (await app.Get<FloorReader>().TankAsync(code, FloorApp.Stop))!.Floor.Tanks[0].Thing;

    private async Task<TankState> StateAsync(string code) =>
        (await app.Get<FloorReader>().TankAsync(code, FloorApp.Stop))!.Floor.Tanks[0].State;

    [Fact]
    public async Task A_brewer_adds_changes_and_removes_a_port()
    {
        await app.TankAsync("PA");
        var brewer = app.As(Role.Brewer);
        const string Path = "/tanks/PA/ports";

        Assert.Equal(HttpStatusCode.Found, (await brewer.SendFormAsync(Path, "ports", Manway)).StatusCode);
        Assert.Equal(
            [new Port(1, "Manway", PortPlace.Lid) { Clamp = Clamp.ThreeInch }],
            (await ThingAsync("PA")).Ports
        );

        await brewer.SendFormAsync(Path, "ports", ("port.1.name", "Hatch"), ("port.1.flange", "90.9"));
        var changed = Assert.Single((await ThingAsync("PA")).Ports);
        Assert.Equal(("Hatch", 90.9), (changed.Name, Math.Round(changed.Flange!.Value.Millimeters, 3)));

        await brewer.SendFormAsync(Path, "ports", ("port.1.gone", "true"));
        Assert.Empty((await ThingAsync("PA")).Ports);
        var history = (await brewer.PageAsync("/tanks/PA/history")).Body.Words();
        Assert.Contains("Port 1: Hatch, Lid, 3 in", history, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Editing_the_tank_leaves_its_ports()
    {
        await app.TankAsync("PB");
        var brewer = app.As(Role.Brewer);
        await brewer.SendFormAsync("/tanks/PB/ports", "ports", Manway);

        await brewer.SendFormAsync("/tanks/PB/edit", "tank", ("tank-name", "Left one"));

        Assert.Single((await ThingAsync("PB")).Ports);
    }

    [Fact]
    public async Task Of_two_who_edit_the_ports_the_second_sees_both_values_and_loses_nothing()
    {
        await app.TankAsync("PC");
        var brewer = app.As(Role.Brewer);
        const string Path = "/tanks/PC/ports";
        await brewer.SendFormAsync(Path, "ports", Manway);
        var opened = await brewer.PageAsync(Path);
        await brewer.SendFormAsync(
            Path,
            opened,
            "ports",
            ("port.1.name", "Hatch"),
            ("port.2.name", "Outlet"),
            ("port.2.place", "Bottom")
        );

        var second = await brewer.SendFormAsync(Path, opened, "ports", ("port.1.name", "Door"));

        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        var page = await second.PageAsync();
        Assert.Contains("Now it is Hatch.", page.Body.Words(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Found, (await brewer.SendFormAsync(Path, page, "ports")).StatusCode);
        Assert.Equal(["Door", "Outlet"], (await ThingAsync("PC")).Ports.Select(port => port.Name));
    }

    [Fact]
    public async Task What_is_usual_is_offered_and_saved_only_by_whoever_looked_at_it()
    {
        await app.TankAsync("PD");
        var brewer = app.As(Role.Brewer);
        var offered = await brewer.PageAsync("/tanks/PD/ports?typical=true");

        Assert.Empty((await ThingAsync("PD")).Ports);
        Assert.Equal(
            HttpStatusCode.Found,
            (await brewer.SendFormAsync("/tanks/PD/ports", offered, "ports")).StatusCode
        );
        Assert.Equal(
            TypicalPorts.Of(await ThingAsync("PD")).Select(port => port.Name),
            (await ThingAsync("PD")).Ports.Select(port => port.Name)
        );
    }

    [Fact]
    public async Task A_part_of_the_wrong_size_is_refused_with_both_diameters_and_goes_on_through_a_reducer()
    {
        await app.TankAsync("PE");
        var brewer = app.As(Role.Brewer);
        await brewer.SendFormAsync("/tanks/PE/ports", "ports", Manway);
        (string, string)[] well =
        [
            ("parts", "Thermowell"),
            ("fitted.0.port", "1"),
            ("fitted.0.part", "Thermowell"),
            ("fitted.0.clamp", "OneAndAHalfInch"),
        ];

        var refused = await brewer.SendFormAsync("/tanks/PE/log/refitted", "entry", well);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var said = (await refused.PageAsync()).Body.Words();
        Assert.Contains("91 mm (3 in)", said, StringComparison.Ordinal);
        Assert.Contains("50.5 mm (1 1/2 in)", said, StringComparison.Ordinal);

        var stored = await brewer.SendFormAsync(
            "/tanks/PE/log/refitted",
            "entry",
            [.. well, ("fitted.0.through-port", "ThreeInch"), ("fitted.0.through-part", "OneAndAHalfInch")]
        );
        Assert.Equal(HttpStatusCode.Found, stored.StatusCode);
        var row = (await brewer.PageAsync("/tanks/PE")).QuerySelector("#ports tbody tr");
        Assert.Equal(
            ["1", "ManwayLid, 3 in", "Thermowell, 1 1/2 inthrough a reducer 3 in to 1 1/2 inFlush"], // a line break each
            row!.Children.Select(cell => cell.Words())
        );
    }

    [Fact]
    public async Task A_port_in_use_stays_until_its_part_is_off()
    {
        await app.TankAsync("PF");
        var brewer = app.As(Role.Brewer);
        await brewer.SendFormAsync("/tanks/PF/ports", "ports", Manway);
        await brewer.SendFormAsync("/tanks/PF/log/parts-seen", "entry", ("fitted.0.part", "SprayBall"));

        var refused = await brewer.SendFormAsync("/tanks/PF/ports", "ports", ("port.1.gone", "true"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);

        await brewer.SendFormAsync("/tanks/PF/log/parts-off", "entry", ("parts", "Spray ball"), ("ports", "1"));
        Assert.Equal([new Fitting(1, Part.SprayBall)], (await StateAsync("PF")).LyingAbout);
        Assert.Contains(
            "Nothing: its part is off",
            (await brewer.PageAsync("/tanks/PF")).QuerySelector("#ports").Words(),
            StringComparison.Ordinal
        );
        await brewer.SendFormAsync("/tanks/PF/ports", "ports", ("port.1.gone", "true"));
        Assert.Empty((await ThingAsync("PF")).Ports);
    }

    [Fact]
    public async Task A_program_puts_a_part_on_and_reads_how_it_fits()
    {
        await app.TankAsync("PG");
        await app.As(Role.Brewer).SendFormAsync("/tanks/PG/ports", "ports", Manway);
        var program = await app.WithTokenAsync("read", "log");
        JsonObject Gauge(string clamp) =>
            new()
            {
                ["id"] = Talk.NewId(),
                ["kind"] = "refitted",
                ["tank"] = "PG",
                ["parts"] = "Gauge",
                ["fitted"] = new JsonArray(
                    new JsonObject
                    {
                        ["port"] = 1,
                        ["part"] = "gauge",
                        ["clamp"] = clamp,
                    }
                ),
            };

        var refused = await (await program.SendAsync(Gauge("two-inch"))).HearAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Equal("clamps-apart", refused["objections"]![0].Text("code"));
        Assert.Equal(64, refused["objections"]![0]!["numbers"]!["other_mm"]!.GetValue<double>());

        await (await program.SendAsync(Gauge("dn65"))).HearAsync(HttpStatusCode.OK);
        var tank = await program.ReadAsync("/tanks/PG");
        Assert.Equal("three-inch", tank["ports"]![0].Text("clamp"));
        Assert.Equal("gauge", tank["state"]!["fitted"]![0].Text("part"));
        var fit = tank["fits"]![0]!;
        Assert.Equal(("step", 72.9, 66), (fit.Text("fit"), Mm(fit["one"]), Mm(fit["other"])));
    }

    private static double Mm(JsonNode? quantity) => quantity!["value"]!.GetValue<double>();
}
