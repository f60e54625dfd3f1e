using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>Washing, passivating and sanitizing, in their order.</summary>
internal sealed class Care(Story story, Shelf shelf)
{
    private const int PassivatedForDays = 80;

    // In no order: what is told later may have happened before.
    private readonly HashSet<(Guid TankId, int Day)> _driedOn = [];

    /// <summary>The inventory's word for the film a tank came with.</summary>
    public void WasDriedOn(Tank tank, int day) => _driedOn.Add((tank.Id, day));

    /// <summary>After the beer: air through, then washed, rinsed and looked at.</summary>
    public void Wash(Tank tank, int day, int hour = 9)
    {
        var visit = story.At(tank, day, hour, 0, story.Crew.Helps(day));
        if (tank.Rating is not null)
        {
            visit.Do(new Vented(tank.Id), 3);
        }

        visit.Do(new Aired(tank.Id), 25);
        WashIn(visit, tank);
        if (tank.IsStainless && Dice.Below($"acid {tank.Code} {day}", 4) is 0)
        {
            visit
                .Do(
                    new Washed(tank.Id, Agent.Acid, Way.SprayBall)
                    {
                        Concentration = "1 %",
                        Temperature = Celsius(40),
                        Minutes = Duration.FromMinutes(20),
                        Used = shelf.Taken(visit.Now, shelf.Citric, Shelf.Grams(10 * Charge(tank))),
                    },
                    25
                )
                .Do(new Rinsed(tank.Id, IsHot: false), 10)
                .Do(new Inspected(tank.Id, InspectedHow.Torch, Passed: true));
        }
    }

    /// <summary>Ready for a brew day: passivated again when the film is getting old, then sanitized shortly before.</summary>
    public void Prepare(Tank tank, int day, int hour)
    {
        KeepFilm(tank, day);
        Sanitize(tank, day, hour, Closure.Vented);
    }

    /// <summary>Passivated two days before, unless that was done not long ago.</summary>
    public void KeepFilm(Tank tank, int day)
    {
        var isFresh = _driedOn.Any(dried =>
            dried.TankId == tank.Id && day - dried.Day is >= 0 and <= PassivatedForDays
        );
        if (tank.IsStainless && !isFresh)
        {
            Passivate(tank, day - 3);
        }
    }

    /// <summary>Washed once more, the bath, and dry the day after.</summary>
    public void Passivate(Tank tank, int day)
    {
        var visit = story.At(tank, day, 13, 0, story.Crew.Brews(day)).Do(new Aired(tank.Id), 10);
        WashIn(visit, tank);
        visit.Do(
            new Passivated(tank.Id, BathKind.Citric)
            {
                Concentration = "4 %",
                Temperature = Celsius(50),
                Minutes = Duration.FromMinutes(60),
                IsRinsed = true,
                Used = shelf.Taken(visit.Now, shelf.Citric, Shelf.Grams(40 * Charge(tank))),
            },
            75
        );
        story.At(tank, day + 1, 10, 0, story.Crew.Helps(day + 1)).Do(new AirDried(tank.Id));
        _driedOn.Add((tank.Id, day + 1));
    }

    /// <summary>Peracetic through the spray ball, or an iodophor soak in plastic; drained after a quarter of an hour.</summary>
    public Visit Sanitize(Tank tank, int day, int hour, Closure held, bool isUnderGas = false)
    {
        var visit = story.At(tank, day, hour, 0, story.Crew.Brews(day));
        return visit
            .Do(
                tank.IsStainless
                    ? new Sanitized(tank.Id, Agent.Peracetic, Way.SprayBall)
                    {
                        Concentration = "0.2 %",
                        Temperature = Celsius(16),
                        Minutes = Duration.FromMinutes(15),
                        Used = shelf.Taken(visit.Now, shelf.Peracetic, Shelf.Milliliters(2 * Charge(tank))),
                    }
                    : new Sanitized(tank.Id, Agent.Iodophor, Way.Soak)
                    {
                        Concentration = "15 mL in 10 L",
                        Minutes = Duration.FromMinutes(10),
                    },
                18
            )
            .Do(new Drained(tank.Id, held) { IsUnderCarbonDioxide = isUnderGas }, 5);
    }

    private void WashIn(Visit visit, Tank tank) =>
        visit
            .Do(new Rinsed(tank.Id, IsHot: false), 12)
            .Do(tank.IsStainless ? Caustic(tank, visit.Now) : ByHand(tank), 35)
            .Do(new Rinsed(tank.Id, IsHot: false), 12)
            .Do(new Inspected(tank.Id, tank.IsStainless ? InspectedHow.Torch : InspectedHow.Eye, Passed: true), 3);

    // Litres that go round: a tenth of the tank, but enough for the pump.
    private static double Charge(Tank tank) => Math.Max(10, tank.Working.Liters / 10);

    private Washed Caustic(Tank tank, DateTimeOffset at) =>
        new(tank.Id, Agent.Caustic, Way.SprayBall)
        {
            Concentration = "2 %",
            Temperature = Celsius(60),
            Minutes = Duration.FromMinutes(30),
            Used = shelf.Taken(at, shelf.Caustic, Shelf.Grams(20 * Charge(tank))),
        };

    private static Washed ByHand(Tank tank) =>
        new(tank.Id, Agent.Alkaline, Way.ByHand)
        {
            Concentration = "20 g in 10 L",
            Temperature = Celsius(38),
            Minutes = Duration.FromMinutes(20),
        };

    private static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);
}
