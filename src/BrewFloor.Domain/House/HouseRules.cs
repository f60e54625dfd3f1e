using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.House;

/// <summary>Numbers the club may change, handed to guards and job rules, never to folds.</summary>
/// <param name="Version">Raised by every change; an objection keeps the version it was judged by.</param>
/// <param name="Zone">The site's time zone: rules like "6 months" are days of its calendar.</param>
/// <param name="Altitude">Of the site, in m: what gauge pressure is measured against.</param>
public sealed record HouseRules(int Version, TimeZoneInfo Zone, Length Altitude)
{
    public static HouseRules Defaults(TimeZoneInfo zone) => new(1, zone, Length.FromMeters(0));

    // Sanitizing; CP: no published source gives these hours. Shares of the limits add up to 1.
    public TimeSpan SanitizedSealed { get; init; } = TimeSpan.FromHours(72);

    public TimeSpan SanitizedClosed { get; init; } = TimeSpan.FromHours(24);

    public TimeSpan SanitizedOpen { get; init; } = TimeSpan.FromHours(4);

    /// <summary>Vented under CO2 this long before filling uses nothing up.</summary>
    public TimeSpan VentedUnderCarbonDioxide { get; init; } = TimeSpan.FromHours(2);

    // Passivation; CP.
    public int PassivationMonths { get; init; } = 6;

    public int SeldomUsedMonths { get; init; } = 4;

    public int SeldomUsedFills { get; init; } = 3;

    public int PassivationOverdueDays { get; init; } = 14;

    public int PassivationUnknownDays { get; init; } = 14;

    // Cleaning; CP.
    public TimeSpan WashOverdue { get; init; } = TimeSpan.FromHours(24);

    public TimeSpan DrainAcidSanitizer { get; init; } = TimeSpan.FromHours(12);

    public TimeSpan DrainOtherSanitizer { get; init; } = TimeSpan.FromHours(24);

    public TimeSpan DrainOverdue { get; init; } = TimeSpan.FromHours(24);

    // Sediment; CP: the cold break is out after the first day or two.
    public TimeSpan DumpTrubAle { get; init; } = TimeSpan.FromHours(12);

    public TimeSpan DumpTrubLager { get; init; } = TimeSpan.FromHours(18);

    public TimeSpan DumpTrubOverdue { get; init; } = TimeSpan.FromHours(48);

    public TimeSpan DumpYeastAfterCrash { get; init; } = TimeSpan.FromHours(24);

    public TimeSpan DumpYeastWarm { get; init; } = TimeSpan.FromHours(48); // above 13 °C

    public TimeSpan DumpYeastCool { get; init; } = TimeSpan.FromDays(7); // above 4 to 13 °C

    public TimeSpan DumpYeastCold { get; init; } = TimeSpan.FromDays(3); // 4 °C and below

    // Gravity.
    public TimeSpan GravityEvery { get; init; } = TimeSpan.FromHours(24);

    public TimeSpan GravityOverdue { get; init; } = TimeSpan.FromHours(24);

    /// <summary>A valve that isn't closed so long after the moment for it lets the gas go that was to stay.</summary>
    public TimeSpan CloseValveOverdue { get; init; } = TimeSpan.FromHours(6);

    /// <summary>In °P a day: above it the beer ferments hard.</summary>
    public double FermentingHardPlatoPerDay { get; init; } = 1.0;

    /// <summary>Two readings at least this long apart, and within <see cref="StablePlato"/>, are stable.</summary>
    public TimeSpan StableFor { get; init; } = TimeSpan.FromHours(44);

    public double StablePlato { get; init; } = 0.1;

    /// <summary>In SG: what takes the place of <see cref="StablePlato"/> when one of the two is by hydrometer.</summary>
    public double StableHydrometer { get; init; } = 0.001;

    // Yeast; CP.
    public TimeSpan CountAfter { get; init; } = TimeSpan.FromDays(4);

    /// <summary>The club has a microscope: a slurry that gets older is to be counted.</summary>
    public bool CountsCultures { get; init; }

    public Temperature CultureKeptBelow { get; init; } = Temperature.FromDegreesCelsius(5);

    public int SlurryDays { get; init; } = 14;

    public int SlurryOverdueDays { get; init; } = 28;

    /// <summary>Shares of living cells, 0 to 1: below the first a culture is due, below the second overdue.</summary>
    public double ViabilityDue { get; init; } = 0.70;

    public double ViabilityOverdue { get; init; } = 0.50;

    public int GenerationLimit { get; init; } = 8;

    public int GenerationLimitStrong { get; init; } = 5; // above 16 °P

    public double HarvestPlatoLimit { get; init; } = 18.2; // an original gravity of 1.075

    public double HarvestAlcoholLimit { get; init; } = 7.5; // % v/v

    public double PitchAlcoholLimit { get; init; } = 8.0; // % v/v of the beer the slurry comes from

    /// <summary>What a jar holds is read through foam and gas.</summary>
    public double YeastErrorShare { get; init; } = 0.10;

    public TimeSpan HarvestWindow { get; init; } = TimeSpan.FromHours(48); // from the end of fermentation

    // Pressure.
    public double PressureCautionShare { get; init; } = 0.90; // of the lower of rating and relief valve

    public int ReliefTestMonths { get; init; } = 12; // CP; local codes may want it sooner

    // Volumes: measuring error.
    public double VolumeErrorShare { get; init; } = 0.03;

    public Volume VolumeError { get; init; } = Volume.FromLiters(2);

    public double HeelShare { get; init; } = 0.01;

    public TimeSpan AnswerWithin { get; init; } = TimeSpan.FromHours(48);

    // How far back one may write.
    public TimeSpan HelperBackdates { get; init; } = TimeSpan.FromHours(24);

    public TimeSpan BrewerBackdates { get; init; } = TimeSpan.FromDays(30);

    /// <summary>Cautions the club switched off.</summary>
    public Listed<string> SilentCautions { get; init; }

    public bool Silences(Objection objection) =>
        objection.Level is Log.Level.Caution && SilentCautions.Contains(objection.Code, StringComparer.Ordinal);

    /// <summary>The day of the site's calendar.</summary>
    public DateOnly DateOf(DateTimeOffset at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, Zone).DateTime);

    /// <summary>The first instant of a day of the site's calendar; where midnight is skipped, the first that exists.</summary>
    public DateTimeOffset StartOf(DateOnly day)
    {
        var midnight = day.ToDateTime(TimeOnly.MinValue);
        while (Zone.IsInvalidTime(midnight))
        {
            midnight = midnight.AddMinutes(1);
        }

        var offset = Zone.IsAmbiguousTime(midnight)
            ? Zone.GetAmbiguousTimeOffsets(midnight).Max()
            : Zone.GetUtcOffset(midnight);
        return new DateTimeOffset(midnight, offset).ToUniversalTime();
    }
}
