using System.Collections.Frozen;

namespace BrewFloor.Brewing.Calculators;

/// <summary>Every question that can be asked.</summary>
public static class AllCalculators
{
    /// <summary>In the order in which they are offered.</summary>
    public static IReadOnlyList<Calculator> All { get; } =
    [
        GravityAt20.Question,
        HowMuchAlcohol.Question,
        OriginalOfAdditions.Question,
        WhenToClose.Question,
        GasInBeer.Question,
        PressureForGas.Question,
        PrimingSugar.Question,
        SealedTankCrash.Question,
        CounterPressureForFilling.Question,
        SealedReceiver.Question,
        GasInCylinder.Question,
        HowMuchSlurry.Question,
        CellsUnderTheMicroscope.Question,
        SlurrySpun.Question,
        AgeOfStoredYeast.Question,
        HowMuchYeastGrows.Question,
        ChargeForCip.Question,
        StockDilution.Question,
        DoseByLabel.Question,
        WeakerFromStock.Question,
        WaterToRinse.Question,
        SprayBallAndPump.Question,
        TimeToDrain.Question,
        PassivationBath.Question,
        ChlorideInWater.Question,
        CausticInClosedTank.Question,
        HotTankCooling.Question,
        OxygenInWort.Question,
        PurgeByCycles.Question,
        PurgeBySweep.Question,
        WhereOxygenComesFrom.Question,
        HeatOfFermenting.Question,
        HeatNow.Question,
        TimeToCrash.Question,
        PassageOfTank.Question,
        TanksOnOneChiller.Question,
        PadAgainstCold.Question,
        GlycolStrength.Question,
        WhenBeerFreezes.Question,
        LitresAtLevel.Question,
        HowManyKegs.Question,
        StockAtMonthEnd.Question,
        DryHopping.Question,
        GasInTheRoom.Question,
    ];

    /// <summary>By its name.</summary>
    public static FrozenDictionary<string, Calculator> ByName { get; } =
        All.ToFrozenDictionary(calculator => calculator.Name, StringComparer.Ordinal);
}
