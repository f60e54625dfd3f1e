using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Tests.SourceTree;
using UnitsNet;
using static BrewFloor.Domain.Tests.Log.MatrixFloor;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Every kind of entry in every condition of a tank: what is written by hand, and what the code says.</summary>
internal static class Matrix
{
    public const string File = "tests/samples/matrix.csv";

    public static readonly (string Name, Func<Naturally, Floor> Floor)[] Conditions =
    [
        ("empty", on => on is Naturally.Exposed ? Natural(on) : Natural(Naturally.Empty)),
        ("holds beer", on => on is Naturally.Exposed ? Exposed(HoldsBeer) : HoldsBeer),
        ("sanitizer in", on => on is Naturally.Exposed ? Exposed(SanitizerIn) : SanitizerIn),
        ("under pressure", on => Natural(on).After(new Purged(K1.Id, Gas.CarbonDioxide)).After(Sealed).After(Read(30))),
        (
            "pressure unknown",
            on => Natural(on).Where(t => t with { Closure = Closure.Closed, IsPressureInDoubt = true })
        ),
        ("gas unknown", on => Natural(on).Where(tank => tank with { Gas = Gas.Unknown })),
        ("open", on => Natural(on).After(new Opened(K1.Id))),
        ("out of service", on => Natural(on).After(new PutOutOfService(K1.Id, "Leaks"))),
        ("retired", on => Natural(on).Retired()),
    ];

    private static Closed Sealed => new(K1.Id) { Closure = Closure.Sealed };

    /// <summary>The table by hand: a row for each line, its cells in the order of the conditions.</summary>
    public static IReadOnlyList<(string Kind, string What, string[] Cells)> ByHand() =>
        [
            .. Tree.Read(File)
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Skip(1)
                .Select(line => line.Split(','))
                .Select(cells => (cells[0], cells[1], cells[2..])),
        ];

    /// <summary>What the code says: the strongest level and the first code of that level; "goes" when it says nothing.</summary>
    public static string Says(Tried tried, Func<Naturally, Floor> condition)
    {
        var floor = condition(tried.On);
        var objections = At(0.001, tried.Entry(floor)).JudgedOn(floor).Objections;
        return objections is [] ? "goes" : Words(objections.MaxBy(o => o.Level)!);
    }

    private static string Words(Objection objection) =>
        objection.Level switch
        {
            Level.Caution => "caution ",
            Level.Stop => "stop ",
            Level.HardStop => "stop! ",
            _ => "impossible ",
        } + objection.Code;

    private static Floor Natural(Naturally on) =>
        on switch
        {
            Naturally.HoldsBeer => HoldsBeer,
            Naturally.SanitizerIn => SanitizerIn,
            Naturally.Exposed => Exposed(Empty),
            _ => Empty,
        };

    private static Floor Exposed(Floor floor) =>
        floor.After(new Domain.Cleaning.Exposed(K1.Id, Domain.Cleaning.ExposureKind.Allergen, "Hazelnut"));

    private static PressureTaken Read(double gauge) => new(K1.Id, Pressure.FromKilopascals(gauge));
}
