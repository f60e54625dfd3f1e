using BrewFloor.Domain;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>What keeps the tanks sound: valves, seals, probes, a new vessel, steel that was hurt, soft parts that met something.</summary>
internal sealed class Upkeep(Story story, Care care, Shelf shelf)
{
    private const string RelievedLow = "The relief valve opens at 142 kPa instead of 180. A new one is ordered.";

    public void All()
    {
        var cellar = story.Cellar;
        Commission(cellar.P2, -402);
        foreach (var (tank, day) in ((Tank, int)[])[(cellar.P1, -400), (cellar.B1, -396), (cellar.B2, -390)])
        {
            TestReliefValve(tank, day, 181);
        }

        foreach (var (tank, day) in ((Tank, int)[])[(cellar.P1, -45), (cellar.P2, -46), (cellar.B1, -48)])
        {
            TestReliefValve(tank, day, 178);
        }

        foreach (
            var (tank, day) in ((Tank, int)[])
                [(cellar.K1, -566), (cellar.K2, -372), (cellar.P1, -297), (cellar.K3, -296)]
        )
        {
            RenewSeals(tank, day);
        }

        foreach (
            var (tank, day) in ((Tank, int)[])
                [(cellar.K1, -702), (cellar.P1, -701), (cellar.K1, -342), (cellar.P1, -341)]
        )
        {
            Calibrate(tank, day);
        }

        Scratch(cellar.K1, -310);
        StopForGlycol(cellar.K2, -180);
        ClearOf(cellar.K3, -586);
        ClearOf(cellar.B2, -583);
        Finings(cellar.B2, -505);
        TakeOutOfService(cellar.B2, -20);
        care.Passivate(cellar.B2, -60);
    }

    private void Commission(Tank tank, int day)
    {
        story
            .At(tank, day, 11, 0, story.Crew.Maive)
            .Do(
                new TankTakenOver(tank.Id)
                {
                    Soil = Soil.Soiled,
                    Gas = Gas.Air,
                    Closure = Closure.Open,
                    IsNeverPassivated = true,
                    Note = "New. Oil of the welding shop on the walls.",
                },
                30
            )
            .Do(new PartsSeen(tank.Id, tank.Fitted()))
            .Do(
                new PressureTested(tank.Id, Passed: true)
                {
                    Pressure = Pressure.FromKilopascals(286),
                    Note = "With water, by the inspector who was called for it.",
                },
                60
            )
            .Do(Relieves(tank, 180, passed: true))
            .Do(new LeakTested(tank.Id, Passed: true));
        care.Passivate(tank, day + 1);
    }

    private void TestReliefValve(Tank tank, int day, double opened) =>
        story.At(tank, day, 12, 0, story.Crew.Torvin).Do(Relieves(tank, opened, passed: true));

    private void RenewSeals(Tank tank, int day, string what = "racking arm and sample valve")
    {
        var visit = story.At(tank, day, 10, 0, story.Crew.Elka);
        visit
            .Do(new Vented(tank.Id))
            .Do(new Opened(tank.Id) { What = "manway" }, 5)
            .Do(new PartsTakenOff(tank.Id, what) { Ports = ArmAndValve(tank) }, 40)
            .Do(
                new GasketChanged(tank.Id, what) { Used = shelf.Taken(visit.Now, shelf.Gaskets, StockAmount.Of(4)) },
                10
            )
            .Do(new Refitted(tank.Id, what), 15)
            .Do(new LeakTested(tank.Id, Passed: true), 5)
            .Do(new Closed(tank.Id) { Closure = Closure.Vented });
    }

    private static Listed<int> ArmAndValve(Tank tank) =>
        [.. tank.Fitted().Where(f => f.Part is Part.RackingArm or Part.SampleValve).Select(f => f.Port)];

    private void Calibrate(Tank tank, int day) =>
        story
            .At(tank, day, 14, 0, story.Crew.Elka)
            .Do(
                new ProbeCalibrated(tank.Id, "thermometer in the jacket well", Passed: true)
                {
                    OffBy = Math.Round(Dice.Swing($"probe {tank.Code} {day}", 0.4), 1),
                }
            );

    private void Scratch(Tank tank, int day)
    {
        story
            .At(tank, day, 15, 0, story.Crew.Rasco)
            .Do(new Triggered(tank.Id, Trigger.Scratch) { Note = "A key fell in and was fished out with a wire." });
        care.Passivate(tank, day + 2);
    }

    private void StopForGlycol(Tank tank, int day)
    {
        story
            .At(tank, day, 9, 30, story.Crew.Torvin)
            .Do(new PutOutOfService(tank.Id, "The glycol valve is stuck open."));
        story
            .At(tank, day + 8, 17, 0, story.Crew.Torvin)
            .Do(new PutBackInService(tank.Id, "New valve, held 4 °C for a night."));
    }

    /// <summary>Soft parts renewed, then two washes with a look inside after each.</summary>
    private void ClearOf(Tank tank, int day)
    {
        RenewSeals(tank, day, "all soft parts");
        story.At(tank, day, 12, 0, story.Crew.Elka).Do(new Cleared(tank.Id, ExposureKind.Allergen));
        care.Wash(tank, day, 13);
        care.Wash(tank, day, 17);
    }

    private void Finings(Tank tank, int day)
    {
        story
            .At(tank, day, 12, 0, story.Crew.Torvin)
            .Do(new Exposed(tank.Id, ExposureKind.Allergen, "fish") { Note = "Isinglass was stirred up in it." });
        ClearOf(tank, day + 1);
    }

    private void TakeOutOfService(Tank tank, int day) =>
        story
            .At(tank, day, 11, 0, story.Crew.Torvin)
            .Do(Relieves(tank, 142, passed: false), 5)
            .Do(new PutOutOfService(tank.Id, RelievedLow));

    private static ReliefValveTested Relieves(Tank tank, double opened, bool passed) =>
        new(tank.Id, passed) { OpenedAt = Pressure.FromKilopascals(opened) };
}
