namespace BrewFloor.DemoSeed;

/// <summary>Two years of brewing: which beer on which day into which tank, and whose yeast.</summary>
internal static class Seasons
{
    public const string AleStrain = "Quill ale";

    public const string LagerStrain = "Siltbank lager";

    public const string MixedStrain = "Osier wild";

    public static IEnumerable<Brew> Of(Cellar cellar) =>
        [.. FirstYear(cellar), .. SecondYear(cellar), .. LastWeeks(cellar)];

    private static IEnumerable<Brew> FirstYear(Cellar c) =>
        [
            new(-724, c.K1, Beer.LanternTax) { IsHarvested = true },
            new(-713, c.K2, Beer.FerryBell) { YeastOf = -724, IsHarvested = true },
            new(-706, c.K1, Beer.SecondSluice) { YeastOf = -713 },
            Lager(-690, c.P1, Beer.SlowTram) with
            {
                IsHarvested = true,
                ToppedUpBy = 12,
            },
            Lager(-674, c.K3, Beer.BargeFog) with
            {
                YeastOf = -690,
            },
            new(-620, c.K1, Beer.LanternTax) { IsHarvested = true },
            new(-611, c.K2, Beer.GorseLine) { YeastOf = -620 },
            new(-600, c.K3, Beer.CoalHeron) { IsPlanned = true },
            new(-560, c.E1, Beer.BucketLetter)
            {
                Note = "Trial of last year's hops.",
                UnpurgedBecause = "A few bottles for next week, capped on foam.",
            },
            Lager(-555, c.P1, Beer.SlowTram) with
            {
                IsPlanned = true,
            },
            new(-470, c.E1, Beer.BucketLetter)
            {
                DoneAnywayBecause = "The mash ran late and the wort was hot in the kettle. It is only the pilot brew.",
            },
            new(-395, c.K1, Beer.FerryBell) { IsHarvested = true },
            new(-384, c.K2, Beer.LanternTax)
            {
                YeastOf = -395,
                Discarded = (9, "Sour and ropy. A cracked gasket at the racking arm let something in."),
            },
        ];

    private static IEnumerable<Brew> SecondYear(Cellar c) =>
        [
            Lager(-350, c.P2, Beer.SlowTram) with
            {
                IsHarvested = true,
                Note = "First brew in the new cone.",
            },
            Lager(-335, c.P1, Beer.BargeFog) with
            {
                YeastOf = -350,
                ToppedUpBy = 10,
            },
            new(-330, c.S1, Beer.FerryBell),
            new(-280, c.K1, Beer.LanternTax) { IsHarvested = true },
            new(-269, c.K2, Beer.FerryBell) { YeastOf = -280, IsHarvested = true },
            new(-262, c.K1, Beer.LanternTax) { YeastOf = -269, IsHarvested = true },
            new(-253, c.K2, Beer.SecondSluice) { YeastOf = -262, IsHarvested = true },
            new(-244, c.K1, Beer.LanternTax)
            {
                YeastOf = -253,
                IsHarvested = true,
                IsPlanned = true,
            },
            new(-235, c.K2, Beer.FerryBell) { YeastOf = -244, IsHarvested = true },
            new(-226, c.K1, Beer.GorseLine)
            {
                YeastOf = -235,
                AllowedBecause = "The burner went out for two hours. Lid and ports were never touched.",
            },
            new(-215, c.K3, Beer.SecondSluice),
            Lager(-200, c.P1, Beer.SlowTram) with
            {
                IsHarvested = true,
            },
            new(-195, c.K3, Beer.FerryBell),
            Lager(-184, c.P2, Beer.BargeFog) with
            {
                YeastOf = -200,
            },
            new(-170, c.K3, Beer.LanternTax),
            new(-70, c.S1, Beer.MossParish)
            {
                Strain = MixedStrain,
                RackedOn = 120,
                IsPlanned = true,
            },
        ];

    /// <summary>From here on it is laid out backwards from today.</summary>
    private static IEnumerable<Brew> LastWeeks(Cellar c) =>
        [
            new(-52, c.K2, Beer.LanternTax) { IsHarvested = true },
            new(-41, c.K1, Beer.FerryBell) { YeastOf = -52, IsHarvested = true },
            new(-34, c.K2, Beer.LanternTax) { YeastOf = -41, IsHarvested = true },
            Lager(-33, c.P1, Beer.SlowTram) with
            {
                RackedOn = 48,
                IsPlanned = true,
            },
            new(-25, c.K1, Beer.SecondSluice) { YeastOf = -34, IsHarvested = true },
            new(-17, c.K2, Beer.FerryBell) { BrightWaits = true },
            new(-2, c.K1, Beer.LanternTax) { IsPlanned = true, IsHarvested = true },
            new(-1, c.K2, Beer.SecondSluice with { Half = 56 }) { TrubWaits = true },
            new(-1, c.E1, Beer.BucketLetter)
            {
                DoneAnywayBecause = "Nobody was there to ask, and the wort was cold in the kettle.",
            },
        ];

    private static Brew Lager(int day, Domain.Tanks.Tank tank, Beer beer) =>
        new(day, tank, beer) { Strain = LagerStrain };
}
