using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using UnitsNet;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of what a tank is: its fields, and the tank they make.</summary>
public static class TankFields
{
    public static IEnumerable<Field> Identity(Wording words, Tank? tank) =>
        [
            new TextField("code")
            {
                IsRequired = true,
                Start = tank?.Code,
                Hint = "hint.code",
            },
            new TextField("tank-name") { Start = tank?.Name },
            new ChoiceField("type", words.Choices<TankType>()) { IsRequired = true, Start = tank?.Type.ToString() },
            new ChoiceField("material", words.Choices<Material>())
            {
                IsRequired = true,
                Start = (tank?.Material ?? Material.Stainless).ToString(),
            },
            Degrees(words, "highest-cleaning", tank?.HighestCleaning) with
            {
                IsRequired = true,
                Hint = "hint.highest-cleaning",
            },
            Litres(words, "working", tank?.Working) with
            {
                IsRequired = true,
                Hint = "hint.working",
            },
            new TextField("headspace")
            {
                IsNumber = true,
                Start = Percent(tank?.HeadspaceWanted ?? 0.20),
                Hint = "hint.headspace",
            },
            new ChoiceField("cooling", words.Choices<Cooling>()) { Start = (tank?.Cooling ?? Cooling.None).ToString() },
            new ChoiceField("heating", words.Choices<Heating>()) { Start = (tank?.Heating ?? Heating.None).ToString() },
            new FlagField("open-type") { Start = Flag(tank?.IsOpenType) },
            new FlagField("vacuum-relief") { Start = Flag(tank?.HasVacuumRelief) },
            new DayField("loan-from") { Start = Day(tank?.OnLoanFrom) },
            new DayField("loan-until") { Start = Day(tank?.OnLoanUntil) },
        ];

    public static IEnumerable<Field> Sizes(Wording words, Tank? tank)
    {
        var shape = tank?.Strapping as VesselShape;
        var cone = shape?.Bottom as ConeBottom;
        var dips = (tank?.Strapping as DipTable)?.Points ?? [];
        return
        [
            Millimetres(words, "diameter", shape?.Diameter),
            Millimetres(words, "cylinder-height", shape?.CylinderHeight),
            new ChoiceField("bottom", words.Choices(["cone", "flat", .. Dishes], "choice.bottom."))
            {
                Start = BottomOf(shape?.Bottom) ?? "cone",
            },
            new TextField("cone-angle")
            {
                IsNumber = true,
                Start = Number(cone?.IncludedAngle?.Degrees),
                Hint = "hint.cone-angle",
            },
            Millimetres(words, "cone-height", cone?.Height),
            Millimetres(words, "outlet", shape?.Outlet),
            new ChoiceField("head", words.Choices(["lid", "dome", .. Dishes], "choice.head."))
            {
                Start = HeadOf(shape?.Head) ?? "lid",
            },
            Millimetres(words, "dome-height", (shape?.Head as DomedHead)?.Height),
            .. TankDips.Fields(words, dips),
        ];
    }

    public static IEnumerable<Field> PressureSide(Wording words, Tank? tank) =>
        [
            Gauge(words, "rating", tank?.Rating?.Highest) with
            {
                Hint = "hint.rating",
            },
            new ChoiceField("rating-source", words.Choices<RatingSource>()) { Start = tank?.Rating?.Source.ToString() },
            Gauge(words, "relief", tank?.Relief?.Setting),
            new DayField("relief-tested") { Start = Day(tank?.Relief?.TestedOn) },
        ];

    /// <summary>The tank that was typed; problems stand in <paramref name="said"/>, and then it is null.</summary>
    public static Tank? Read(FormReader said, Guid id, Tank? before)
    {
        var strapping = ReadStrapping(said);
        var tank = new Tank(id, said.RequiredText("code").ToUpperInvariant())
        {
            Version = before?.Version ?? 1,
            Name = said.TextOrNone("tank-name"),
            Type = said.Choice<TankType>("type"),
            Material = said.Choice<Material>("material"),
            HighestCleaning = said.Degrees("highest-cleaning"),
            Strapping = strapping!,
            Working = said.Litres("working"),
            Rating = ReadRating(said),
            Relief = ReadRelief(said),
            HasVacuumRelief = said.Flag("vacuum-relief"),
            Cooling = said.ChoiceOrNone<Cooling>("cooling") ?? Cooling.None,
            Heating = said.ChoiceOrNone<Heating>("heating") ?? Heating.None,
            IsOpenType = said.Flag("open-type"),
            HeadspaceWanted = ReadHeadspace(said),
            OnLoanFrom = said.DayOrNone("loan-from"),
            OnLoanUntil = said.DayOrNone("loan-until"),
            RetiredOn = before?.RetiredOn,
            Ports = before?.Ports ?? [], // on a page of their own
        };
        return said.IsFine && strapping is not null ? tank : null;
    }

    private static double ReadHeadspace(FormReader said)
    {
        var percent = said.FigureOrNone("headspace") ?? 20;
        if (percent is < 0 or > 50)
        {
            said.Refuse("headspace", new Refusal("out-of-range", "headspace", "0", "50", "%"));
        }

        return percent / 100;
    }

    private static readonly string[] Dishes = [.. Enum.GetNames<DishKind>()];

    private static IStrapping? ReadStrapping(FormReader said)
    {
        DipPoint[] dips = [.. TankDips.Read(said)];
        if (dips.Length > 0)
        {
            var table = DipTable.Measured(dips);
            return table.Gives(out var read) ? read : Refused(said, "dips", table.Refusal!);
        }

        var (diameter, height) = (said.LevelOrNone("diameter"), said.LevelOrNone("cylinder-height"));
        if (diameter is null || height is null)
        {
            return Refused(
                said,
                diameter is null ? "diameter" : "cylinder-height",
                new Refusal("missing", "diameter", "", "")
            );
        }

        var shape = VesselShape.Measured(
            diameter.Value,
            height.Value,
            ReadBottom(said),
            said.LevelOrNone("outlet") ?? Length.Zero,
            ReadHead(said)
        );
        return shape.Gives(out var measured) ? measured : Refused(said, shape.Refusal!.What, shape.Refusal);
    }

    private static VesselBottom ReadBottom(FormReader said) =>
        said.Text("bottom") switch
        {
            "flat" => new FlatBottom(),
            var dish when Enum.TryParse<DishKind>(dish, out var kind) => new DishedBottom(kind),
            _ => new ConeBottom(
                said.FigureOrNone("cone-angle") is { } angle ? Angle.FromDegrees(angle) : null,
                said.LevelOrNone("cone-height")
            ),
        };

    private static VesselHead ReadHead(FormReader said) =>
        said.Text("head") switch
        {
            "dome" => new DomedHead(said.LevelOrNone("dome-height") ?? Length.Zero),
            var dish when Enum.TryParse<DishKind>(dish, out var kind) => new DishedHead(kind),
            _ => new FlatLid(),
        };

    private static Rating? ReadRating(FormReader said)
    {
        if (said.GaugeOrNone("rating") is not { } highest)
        {
            return null;
        }

        if (said.ChoiceOrNone<RatingSource>("rating-source") is { } source)
        {
            return new Rating(highest, source);
        }

        said.Refuse("rating-source", new Refusal("missing", "rating-source", "", ""));
        return null;
    }

    private static ReliefValve? ReadRelief(FormReader said)
    {
        if (said.GaugeOrNone("relief") is not { } setting)
        {
            return null;
        }

        if (said.DayOrNone("relief-tested") is { } tested)
        {
            return new ReliefValve(setting, tested);
        }

        said.Refuse("relief-tested", new Refusal("missing", "relief-tested", "", ""));
        return null;
    }

    private static IStrapping? Refused(FormReader said, string field, Refusal refusal)
    {
        said.Refuse(field, refusal);
        return null;
    }

    private static QuantityField Litres(Wording words, string name, Volume? volume) =>
        new(name, Measure.Volume) { Start = Number(volume?.As(words.Figures.Units.Volume)) };

    private static QuantityField Millimetres(Wording words, string name, Length? length) =>
        new(name, Measure.Level) { Start = Number(length?.As(words.Figures.Units.Length)) };

    private static QuantityField Degrees(Wording words, string name, Temperature? temperature) =>
        new(name, Measure.Temperature) { Start = Number(temperature?.As(words.Figures.Units.Temperature)) };

    private static QuantityField Gauge(Wording words, string name, Pressure? pressure) =>
        new(name, Measure.Pressure) { Start = Number(pressure?.As(words.Figures.Units.Pressure)) };

    private static string? BottomOf(VesselBottom? bottom) =>
        bottom switch
        {
            null => null,
            FlatBottom => "flat",
            DishedBottom dish => dish.Kind.ToString(),
            _ => "cone",
        };

    private static string? HeadOf(VesselHead? head) =>
        head switch
        {
            null => null,
            DomedHead => "dome",
            DishedHead dish => dish.Kind.ToString(),
            _ => "lid",
        };

    private static string? Number(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture);

    private static string? Percent(double share) => Number(share * 100);

    private static string? Flag(bool? flag) => flag is true ? "true" : null;

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
