using System.Globalization;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>
/// An invented log of any length: each tank is filled, read, emptied and cleaned in turns of a hundred entries and two weeks,
/// and stands at another place of its turn than its neighbours. Longer means further back, not denser.
/// </summary>
internal sealed class Generator(int tanks, int entries, DateTimeOffset now)
{
    private const int Turn = 100;
    private const int LastReading = 89; // then it is emptied and cleaned
    private static readonly TimeSpan Between = TimeSpan.FromHours(3.36); // a turn takes two weeks

    private readonly int _each = entries / tanks;

    public IReadOnlyList<Tank> Tanks { get; } = [.. Enumerable.Range(0, tanks).Select(ATank)];

    /// <summary>In the order of time, which is the order of writing.</summary>
    public IEnumerable<LogEntry> Entries()
    {
        for (var line = 0; line < _each; line++)
        {
            for (var tank = 0; tank < tanks; tank++)
            {
                yield return Entry(tank, line);
            }
        }
    }

    private static int PlaceToday(int tank) => 20 + (tank * 37 % 80); // seven in eight hold beer

    private LogEntry Entry(int tank, int line)
    {
        var place = line - _each + PlaceToday(tank);
        var turn = (int)Math.Floor(place / (double)Turn);
        var step = place - (turn * Turn);
        var isBefore = place - step < PlaceToday(tank) - _each; // the turn began before the log
        var at = now - ((_each - line) * Between) + TimeSpan.FromSeconds(tank) + TimeSpan.FromTicks(10);
        var entry = isBefore ? new Noted(Subject.Tank(IdOf(1, tank))) : Step(tank, turn, step);
        return entry with
        {
            Id = IdOf(3, (line * tanks) + tank),
            At = at,
            Note = isBefore || step % 20 == 7 ? "Looked at, nothing to say." : null,
        };
    }

    private static LogEntry Step(int number, int turn, int step)
    {
        var (tank, batch) = (IdOf(1, number), IdOf(2, ((turn + 5000) * 1000) + number));
        return step switch
        {
            0 => new Filled(tank, batch, Volume.FromLiters(150))
            {
                NewBatch = new(batch, "House pale", "Pale ale", BeerKind.Ale)
                {
                    OriginalGravity = SpecificGravity.Of(1.048),
                    LimitOfAttenuation = SpecificGravity.Of(1.010),
                    ColourEbc = 8 + (number % 40),
                },
            },
            1 => new TemperatureSet(tank, Temperature.FromDegreesCelsius(19)) { BatchId = batch },
            <= LastReading when step % 4 == 2 => new GravityTaken(
                tank,
                batch,
                new(
                    Math.Round(1.048 - (0.038 * Math.Min(1, step / 50d)), 4),
                    GravityScale.Sg2020,
                    Instrument.DensityMeter,
                    null
                )
            ),
            <= LastReading when step % 20 == 7 => new PhTaken(tank, 4.4) { BatchId = batch },
            <= LastReading => new TemperatureTaken(tank, Temperature.FromDegreesCelsius(18 + (step % 5 * 0.3)))
            {
                BatchId = batch,
            },
            90 => new Packaged(tank, batch, Volume.FromLiters(148), []),
            91 => new Emptied(tank, batch, Volume.FromLiters(1)),
            92 or 94 or 97 => new Rinsed(tank, IsHot: false),
            93 => new Washed(tank, Agent.Alkaline, Way.SprayBall),
            95 => new Passivated(tank, BathKind.Citric) { IsRinsed = true },
            96 => new AirDried(tank),
            98 => new Inspected(tank, InspectedHow.Torch, Passed: true),
            _ => new Noted(Subject.Tank(tank)),
        };
    }

    private static Tank ATank(int number) =>
        new(IdOf(1, number), string.Create(CultureInfo.InvariantCulture, $"K{number + 1}"))
        {
            Type = number % 5 == 4 ? TankType.PressureRatedConical : TankType.ConicalFermenter,
            Material = Material.Stainless,
            HighestCleaning = Temperature.FromDegreesCelsius(85),
            Strapping = VesselShape
                .Measured(
                    Length.FromMillimeters(540 + (number % 7 * 15)),
                    Length.FromMillimeters(760 + (number % 11 * 20)),
                    new ConeBottom(Angle.FromDegrees(60)),
                    Length.FromMillimeters(34),
                    new DishedHead(DishKind.Kloepper)
                )
                .Value,
            Working = Volume.FromLiters(160),
            Cooling = Cooling.Jacket,
            Rating = number % 5 == 4 ? new(Pressure.FromKilopascals(200), RatingSource.Plate) : null,
            Relief =
                number % 5 == 4
                    ? new(Pressure.FromKilopascals(180), DateOnly.FromDateTime(DateTime.UnixEpoch).AddYears(56))
                    : null,
        };

    // Ids that grow like those which senders make, and are the same each time.
    private static Guid IdOf(int kind, int number) =>
        Guid.Parse(string.Create(CultureInfo.InvariantCulture, $"018f0000-000{kind}-7000-8000-{number:x12}"));
}
