using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class HeatTests
{
    public static readonly TheoryData<bool, LogEntry[], LogEntry> Steps = new()
    {
        { true, [Vented(0), Closed(1)], Rinsed(2, hot: true) },
        { true, [Vented(0), Closed(1)], Washed(2, celsius: 60) },
        { true, [Vented(0), Closed(1)], Washed(2, celsius: 40.1) },
        { false, [Vented(0), Closed(1)], Washed(2, celsius: 40) }, // the water of a first rinse
        { true, [Vented(0), Closed(1)], Then(2, new Passivated(K3.Id, BathKind.Citric) { Temperature = Celsius(60) }) },
        { true, [Rinsed(0, hot: true)], Closed(1) },
        { true, [Washed(0, celsius: 60)], Closed(1, Closure.Sealed) },
        { true, [Rinsed(0, hot: true)], Set(1, 100) },
        { false, [Rinsed(0, hot: true)], Closed(1, Closure.Vented) },
        { false, [Rinsed(0, hot: true)], Rinsed(1) }, // cold, with the vent open
        { true, [Rinsed(0, hot: true), Closed(1)], Rinsed(2) }, // shut anyway, and now cold
        { false, [Rinsed(0, hot: true), Rinsed(1)], Closed(2) },
        { false, [Rinsed(0, hot: true), Aired(1)], Closed(2) },
        { true, [Rinsed(0, hot: true), Vented(1)], Closed(2) }, // vented is not cooled
        { false, [Rinsed(0, hot: true), Then(1, new TemperatureTaken(K3.Id, Celsius(25)))], Closed(2) },
    };

    [Theory]
    [MemberData(nameof(Steps))]
    public void A_hot_tank_is_not_shut_and_a_shut_tank_not_heated_or_cooled(bool stopped, LogEntry[] log, LogEntry next)
    {
        var objection = After(log).Says(next).FirstOrDefault(o => o.Code is "hot-and-shut");

        Assert.Equal(stopped ? Level.HardStop : null, objection?.Level);
    }

    [Fact]
    public void It_says_what_pressure_would_be_left() =>
        Assert.Equal(
            [Objection.HardStop("hot-and-shut", new("tank", "K3"), new("absolute", KPa(47)))],
            After(Rinsed(0, hot: true)).Says(Closed(1))
        );

    [Fact]
    public void Wort_has_cooled_what_hot_water_heated_unless_it_is_hot_itself()
    {
        LogEntry[] scalded = [Rinsed(0, hot: true)];
        var cool = Then(1, new Filled(K3.Id, Batch118, Litres(18)) { Temperature = Celsius(20) });

        Assert.Empty(After([.. scalded, cool]).Says(Closed(2, Closure.Vented)));
        Assert.DoesNotContain("hot-and-shut", After([.. scalded, cool]).Says(Closed(2)).Codes());
        Assert.DoesNotContain(
            "hot-and-shut",
            After([.. scalded, cool with { Temperature = Celsius(36) }]).Says(Closed(2)).Codes() // a farmhouse ale
        );
        Assert.Contains(
            "hot-and-shut",
            After([.. scalded, cool with { Temperature = Celsius(80) }]).Says(Closed(2)).Codes()
        );
    }
}
