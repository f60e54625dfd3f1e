using BrewFloor.Brewing;
using UnitsNet;
using static BrewFloor.Domain.House.HouseBasis;
using static BrewFloor.Domain.House.HouseSubject;
using static BrewFloor.Domain.House.HouseUnit;

namespace BrewFloor.Domain.House;

/// <summary>What was typed for the house rules.</summary>
/// <param name="Rules">With every number that makes sense.</param>
/// <param name="Problems">By key; none: the rules can be kept.</param>
public sealed record TypedRules(HouseRules Rules, IReadOnlyDictionary<string, Refusal> Problems);

/// <summary>Every number of the house rules, in the order they are shown.</summary>
public static class HouseNumbers
{
    public static readonly Listed<HouseNumber> All =
    [
        .. About(
            Sanitizing,
            Trade,
            Long("sanitized-sealed", 1, 336, r => r.SanitizedSealed, (r, v) => r with { SanitizedSealed = v }),
            Long("sanitized-closed", 1, 168, r => r.SanitizedClosed, (r, v) => r with { SanitizedClosed = v }),
            Long("sanitized-open", 0.25, 48, r => r.SanitizedOpen, (r, v) => r with { SanitizedOpen = v }),
            Long(
                "vented-gas",
                0,
                24,
                r => r.VentedUnderCarbonDioxide,
                (r, v) => r with { VentedUnderCarbonDioxide = v }
            )
        ),
        .. About(
            Passivation,
            Trade,
            Whole("passivation", Months, 1, 36, r => r.PassivationMonths, (r, v) => r with { PassivationMonths = v }),
            Whole("seldom", Months, 1, 36, r => r.SeldomUsedMonths, (r, v) => r with { SeldomUsedMonths = v }),
            Whole("seldom-fills", Times, 1, 20, r => r.SeldomUsedFills, (r, v) => r with { SeldomUsedFills = v }),
            Whole(
                "passivation-late",
                Days,
                1,
                90,
                r => r.PassivationOverdueDays,
                (r, v) => r with { PassivationOverdueDays = v }
            ),
            Whole(
                "passivation-unknown",
                Days,
                0,
                90,
                r => r.PassivationUnknownDays,
                (r, v) => r with { PassivationUnknownDays = v }
            )
        ),
        .. About(
            HouseSubject.Cleaning,
            Trade,
            Long("wash-late", 1, 168, r => r.WashOverdue, (r, v) => r with { WashOverdue = v }),
            Long("drain-acid", 0.5, 168, r => r.DrainAcidSanitizer, (r, v) => r with { DrainAcidSanitizer = v }),
            Long("drain-other", 0.5, 168, r => r.DrainOtherSanitizer, (r, v) => r with { DrainOtherSanitizer = v }),
            Long("drain-late", 1, 168, r => r.DrainOverdue, (r, v) => r with { DrainOverdue = v })
        ),
        .. About(
            Sediment,
            Trade,
            Long("trub-ale", 1, 168, r => r.DumpTrubAle, (r, v) => r with { DumpTrubAle = v }),
            Long("trub-lager", 1, 168, r => r.DumpTrubLager, (r, v) => r with { DumpTrubLager = v }),
            Long("trub-late", 2, 336, r => r.DumpTrubOverdue, (r, v) => r with { DumpTrubOverdue = v }),
            Long("yeast-crash", 1, 336, r => r.DumpYeastAfterCrash, (r, v) => r with { DumpYeastAfterCrash = v }),
            Long("yeast-warm", 4, 336, r => r.DumpYeastWarm, (r, v) => r with { DumpYeastWarm = v }),
            Long("yeast-cool", 4, 672, r => r.DumpYeastCool, (r, v) => r with { DumpYeastCool = v }),
            Long("yeast-cold", 4, 672, r => r.DumpYeastCold, (r, v) => r with { DumpYeastCold = v })
        ),
        .. About(
            Gravity,
            Ours,
            Long("gravity-every", 4, 168, r => r.GravityEvery, (r, v) => r with { GravityEvery = v }),
            Long("gravity-late", 1, 168, r => r.GravityOverdue, (r, v) => r with { GravityOverdue = v }),
            Long("valve-late", 1, 48, r => r.CloseValveOverdue, (r, v) => r with { CloseValveOverdue = v }),
            new(
                "ferments-hard",
                PlatoPerDay,
                0.2,
                5,
                r => r.FermentingHardPlatoPerDay,
                (r, v) => r with { FermentingHardPlatoPerDay = v }
            ),
            Long("stable-for", 12, 240, r => r.StableFor, (r, v) => r with { StableFor = v }),
            new("stable-plato", Plato, 0.02, 0.5, r => r.StablePlato, (r, v) => r with { StablePlato = v }),
            new(
                "stable-hydrometer",
                SpecificGravity,
                0.0002,
                0.002,
                r => r.StableHydrometer,
                (r, v) => r with { StableHydrometer = v }
            )
        ),
        .. About(
            HouseSubject.Yeast,
            Trade,
            Long("count-after", 12, 720, r => r.CountAfter, (r, v) => r with { CountAfter = v }),
            new(
                "kept-below",
                Celsius,
                1,
                12,
                r => r.CultureKeptBelow.DegreesCelsius,
                (r, v) => r with { CultureKeptBelow = Temperature.FromDegreesCelsius(v) }
            ),
            Whole("slurry", Days, 1, 120, r => r.SlurryDays, (r, v) => r with { SlurryDays = v }),
            Whole("slurry-late", Days, 2, 240, r => r.SlurryOverdueDays, (r, v) => r with { SlurryOverdueDays = v }),
            Share("viability-due", 30, 95, r => r.ViabilityDue, (r, v) => r with { ViabilityDue = v }),
            Share("viability-late", 10, 90, r => r.ViabilityOverdue, (r, v) => r with { ViabilityOverdue = v }),
            Whole("generations", Times, 1, 50, r => r.GenerationLimit, (r, v) => r with { GenerationLimit = v }),
            Whole(
                "generations-strong",
                Times,
                1,
                50,
                r => r.GenerationLimitStrong,
                (r, v) => r with { GenerationLimitStrong = v }
            ),
            new("harvest-plato", Plato, 10, 30, r => r.HarvestPlatoLimit, (r, v) => r with { HarvestPlatoLimit = v }),
            new(
                "harvest-alcohol",
                AlcoholByVolume,
                3,
                15,
                r => r.HarvestAlcoholLimit,
                (r, v) => r with { HarvestAlcoholLimit = v }
            ),
            new(
                "pitch-alcohol",
                AlcoholByVolume,
                3,
                15,
                r => r.PitchAlcoholLimit,
                (r, v) => r with { PitchAlcoholLimit = v }
            ),
            Share("yeast-error", 1, 50, r => r.YeastErrorShare, (r, v) => r with { YeastErrorShare = v }) with
            {
                Basis = Ours,
            },
            Long("harvest-window", 6, 336, r => r.HarvestWindow, (r, v) => r with { HarvestWindow = v })
        ),
        .. About(
            HouseSubject.Pressure,
            Trade,
            Share(
                "pressure-caution",
                50,
                95,
                r => r.PressureCautionShare,
                (r, v) => r with { PressureCautionShare = v }
            ) with
            {
                Basis = Ours,
            },
            Whole("relief-test", Months, 1, 24, r => r.ReliefTestMonths, (r, v) => r with { ReliefTestMonths = v })
        ),
        .. About(
            Volumes,
            Ours,
            Share("volume-share", 0.5, 15, r => r.VolumeErrorShare, (r, v) => r with { VolumeErrorShare = v }),
            new(
                "volume-error",
                Litres,
                0.1,
                100,
                r => r.VolumeError.Liters,
                (r, v) => r with { VolumeError = Volume.FromLiters(v) }
            ),
            Share("heel", 0, 10, r => r.HeelShare, (r, v) => r with { HeelShare = v })
        ),
        .. About(
            Writing,
            Ours,
            Long("answer-within", 1, 336, r => r.AnswerWithin, (r, v) => r with { AnswerWithin = v }),
            Long("helper-back", 1, 168, r => r.HelperBackdates, (r, v) => r with { HelperBackdates = v }),
            Long("brewer-back", 1, 2160, r => r.BrewerBackdates, (r, v) => r with { BrewerBackdates = v })
        ),
    ];

    // The first is never more than the second: what is overdue was due before.
    private static readonly (string Lower, string Higher)[] InOrder =
    [
        ("sanitized-open", "sanitized-closed"),
        ("sanitized-closed", "sanitized-sealed"),
        ("seldom", "passivation"),
        ("trub-ale", "trub-late"),
        ("trub-lager", "trub-late"),
        ("slurry", "slurry-late"),
        ("viability-late", "viability-due"),
        ("generations-strong", "generations"),
        ("helper-back", "brewer-back"),
    ];

    /// <summary>The rules with what was typed; what isn't there stays.</summary>
    /// <param name="typed">By key. Null: that number isn't asked for.</param>
    public static TypedRules Read(HouseRules rules, Func<string, string?> typed)
    {
        var problems = new Dictionary<string, Refusal>(StringComparer.Ordinal);
        foreach (var number in All)
        {
            if (typed(number.Key) is not { } text)
            {
                continue;
            }

            var read = number.Read(text);
            if (read.Gives(out var value))
            {
                rules = number.With(rules, value);
            }
            else
            {
                problems[number.Key] = read.Refusal!;
            }
        }

        foreach (var (lower, higher) in InOrder.Where(pair => Of(pair.Lower).Of(rules) > Of(pair.Higher).Of(rules)))
        {
            problems.TryAdd(higher, new Refusal("house-order", lower, Of(lower).Text(rules), ""));
        }

        return new(rules, problems);
    }

    /// <summary>The numbers in which the second differs from the first.</summary>
    public static IEnumerable<HouseNumber> Between(HouseRules first, HouseRules second) =>
        All.Where(number => !string.Equals(number.Text(first), number.Text(second), StringComparison.Ordinal));

    public static HouseNumber Of(string key) =>
        All.Single(number => string.Equals(number.Key, key, StringComparison.Ordinal));

    private static IEnumerable<HouseNumber> About(
        HouseSubject subject,
        HouseBasis basis,
        params IEnumerable<HouseNumber> numbers
    ) => numbers.Select(number => number with { Subject = subject, Basis = number.Basis is Ours ? Ours : basis });

    private static HouseNumber Long(
        string key,
        double least,
        double most,
        Func<HouseRules, TimeSpan> of,
        Func<HouseRules, TimeSpan, HouseRules> with
    ) =>
        new(
            key,
            Hours,
            least,
            most,
            rules => of(rules).TotalHours,
            (rules, value) => with(rules, TimeSpan.FromHours(value))
        );

    private static HouseNumber Whole(
        string key,
        HouseUnit unit,
        int least,
        int most,
        Func<HouseRules, int> of,
        Func<HouseRules, int, HouseRules> with
    ) => new(key, unit, least, most, rules => of(rules), (rules, value) => with(rules, (int)value));

    private static HouseNumber Share(
        string key,
        double least,
        double most,
        Func<HouseRules, double> of,
        Func<HouseRules, double, HouseRules> with
    ) => new(key, Percent, least, most, rules => 100 * of(rules), (rules, value) => with(rules, value / 100));
}
