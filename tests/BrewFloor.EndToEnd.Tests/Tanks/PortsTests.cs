using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;
using UnitsNet;

namespace BrewFloor.EndToEnd.Tests.Tanks;

/// <summary>Ports written down, parts put on them: on a phone, without script, and drawn.</summary>
public sealed class PortsTests(FloorApp floor) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task A_thermowell_that_is_too_small_for_a_port_goes_on_it_through_a_reducer_and_is_drawn()
    {
        await floor.AddTankAsync(SomeTanks.Conical, "Q1");
        await using var olga = await floor.VisitAsync(FloorApp.Brewer, Screen.Phone with { HasScript = false });
        await olga.OpenAsync("/tanks/Q1");
        await olga.SeesAsync("No ports are written down");
        await olga.PressAsync("Change ports");
        await olga.TypeAsync("Name", "Hatch");
        await olga.ChooseAsync("Where", "Lid");
        await olga.ChooseAsync("Its clamp", "3 in · 91 mm");
        await olga.PressAsync("Save");
        await olga.SeesAsync("Hatch");

        await olga.OpenAsync("/tanks/Q1/log/refitted");
        await olga.TypeAsync("Which parts", "thermowell");
        await olga.ChooseAsync("Port", "1 Hatch, 3 in");
        await olga.ChooseAsync("Part", "Thermowell");
        await olga.ChooseAsync("The part's clamp", "1 1/2 in · 50.5 mm");
        await olga.PressAsync("Refit parts");
        await olga.SeesAsync("91 mm (3 in)");
        await olga.SeesAsync("50.5 mm (1 1/2 in)");
        await olga.ShotIfWantedAsync("ports-refused-phone");

        await olga.ChooseAsync("Reducer, end at the port", "3 in · 91 mm");
        await olga.ChooseAsync("Reducer, end at the part", "1 1/2 in · 50.5 mm");
        await olga.PressAsync("Refit parts");
        await olga.SeesAsync("through a reducer 3 in to 1 1/2 in");
        await olga.SeesAsync("Flush");
        Assert.Equal(1, await olga.Page.Locator("#ports svg.ports text.no").CountAsync());
        Assert.True(await olga.Page.Locator("#ports svg.ports .part").CountAsync() > 0);
    }

    [Fact]
    public async Task With_script_the_floor_says_what_does_not_fit_while_it_is_chosen()
    {
        await floor.AddTankAsync(WithManyPorts, "Q2");
        await using var olga = await floor.VisitAsync(FloorApp.Brewer, Screen.Phone);
        await olga.OpenAsync("/tanks/Q2/log/refitted");
        await olga.TypeAsync("Which parts", "gauge");
        await olga.ChooseAsync("Port", "1 Hops, 4 in");
        await olga.ChooseAsync("Part", "Gauge");
        await olga.ChooseAsync("The part's clamp", "2 in · 64 mm");

        await olga.SeesAsync("119 mm (4 in)");
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("sunlight")]
    public async Task The_numbers_of_many_ports_can_be_told_apart(string theme)
    {
        var tank = await floor.AddTankAsync(WithManyPorts, $"Q{char.ToUpperInvariant(theme[0])}");
        await floor.LogAsync(new PartsSeen(tank.Id, [.. tank.Ports.SelectMany(On)]));
        foreach (var (name, screen) in ((string, Screen)[])[("phone", Screen.Phone), ("desk", Screen.Desk)])
        {
            await using var olga = await floor.VisitAsync(FloorApp.Brewer, screen with { Theme = theme });
            await olga.OpenAsync($"/tanks/{tank.Code}");
            await olga.ShotIfWantedAsync($"ports-{name}-{theme}");
            Assert.Equal(0, await olga.Page.EvaluateAsync<int>(Overlapping));
            Assert.Equal(tank.Ports.Count, await olga.Page.Locator("svg.ports text.no").CountAsync());
            await olga.OpenAsync($"/tanks/{tank.Code}/ports");
            await olga.ShotIfWantedAsync($"ports-edit-{name}-{theme}");
            await olga.OpenAsync($"/tanks/{tank.Code}/log/parts-seen");
            await olga.ShotIfWantedAsync($"ports-seen-{name}-{theme}");
        }
    }

    private const string Overlapping = """
        () => {
          const all = [...document.querySelectorAll('svg.ports text.no')].map(text => text.getBoundingClientRect());
          const meet = (a, b) => a.left < b.right && b.left < a.right && a.top + 2 < b.bottom && b.top + 2 < a.bottom;
          return all.flatMap((a, i) => all.slice(i + 1).filter(b => meet(a, b))).length;
        }
        """;

    private static IEnumerable<Fitting> On(Port port) =>
        Enum.TryParse<Part>(port.Name.Replace(" ", "", StringComparison.Ordinal), ignoreCase: true, out var part)
            ?
            [
                new Fitting(port.Number, part)
                {
                    Clamp = port.Clamp is Clamp.ThreeInch ? Clamp.OneAndAHalfInch : port.Clamp,
                    Through =
                        port.Clamp is Clamp.ThreeInch ? new Adapter(Clamp.ThreeInch, Clamp.OneAndAHalfInch) : null,
                },
            ]
            : [];

    private static Tank WithManyPorts(Guid id, string code)
    {
        var tank = SomeTanks.PressureRated(id, code);
        (string Name, PortPlace Place, Clamp Clamp, double At, double Around)[] ports =
        [
            ("Hops", PortPlace.Lid, Clamp.FourInch, 0, 0),
            ("Spray ball", PortPlace.Lid, Clamp.OneAndAHalfInch, 140, 90),
            ("Relief valve", PortPlace.Lid, Clamp.OneAndAHalfInch, 140, 270),
            ("Blow off", PortPlace.Lid, Clamp.TwoInch, 215, 90),
            ("Gas post", PortPlace.Lid, Clamp.OneInch, 215, 270),
            ("Gauge", PortPlace.Side, Clamp.ThreeInch, 900, 270),
            ("Vacuum relief", PortPlace.Side, Clamp.OneAndAHalfInch, 860, 90),
            ("Sight glass", PortPlace.Side, Clamp.ThreeInch, 760, 0),
            ("Thermowell", PortPlace.Side, Clamp.OneAndAHalfInch, 740, 90),
            ("Sample valve", PortPlace.Side, Clamp.OneAndAHalfInch, 660, 90),
            ("Decarbonation coil", PortPlace.Side, Clamp.OneAndAHalfInch, 640, 270),
            ("Carbonation stone", PortPlace.Side, Clamp.OneAndAHalfInch, 520, 270),
            ("Racking arm", PortPlace.Cone, Clamp.OneAndAHalfInch, 300, 90),
            ("Blank cap", PortPlace.Cone, Clamp.TwoInch, 250, 270),
            ("Behind", PortPlace.Side, Clamp.TwoInch, 560, 180),
            ("Valve", PortPlace.Bottom, Clamp.Dn40, 0, 0),
        ];
        return tank with
        {
            Ports =
            [
                .. ports.Select(
                    (port, index) =>
                        new Port(index + 1, port.Name, port.Place)
                        {
                            Clamp = port.Clamp,
                            Height = port.Place is PortPlace.Side or PortPlace.Cone
                                ? Length.FromMillimeters(port.At)
                                : null,
                            FromMiddle = port.Place is PortPlace.Lid ? Length.FromMillimeters(port.At) : null,
                            Around = Angle.FromDegrees(port.Around),
                        }
                ),
            ],
        };
    }
}
