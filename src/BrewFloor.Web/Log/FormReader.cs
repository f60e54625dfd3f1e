using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Units;
using Microsoft.Extensions.Primitives;
using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Web.Log;

/// <summary>Reads what a person posted: every field into the domain's own types, every doubt into a sentence under its field.</summary>
/// <remarks>Unread throws here and nothing is lost: what can't be read is a problem, and the text stands in the form again.</remarks>
/// <param name="posted">The fields as posted.</param>
/// <param name="times">Reads typed times of the site.</param>
public sealed class FormReader(IReadOnlyDictionary<string, StringValues> posted, SiteTimes times)
{
    private readonly Dictionary<string, Refusal> _problems = new(StringComparer.Ordinal);
    private readonly List<TypedText> _typed = [];

    /// <summary>What could not be read, by the name of its field.</summary>
    public IReadOnlyDictionary<string, Refusal> Problems => _problems;

    /// <summary>What was typed for quantities, by the name of the stored field.</summary>
    public Listed<TypedText> Typed => [.. _typed];

    public bool IsFine => _problems.Count == 0;

    /// <summary>As posted, trimmed; empty when it wasn't.</summary>
    public string Text(string name) => posted.TryGetValue(name, out var value) ? value.ToString().Trim() : "";

    public string? TextOrNone(string name) => Text(name) is { Length: > 0 } text ? text : null;

    public string RequiredText(string name)
    {
        var text = Text(name);
        if (text.Length == 0)
        {
            Refuse(name, new Refusal("missing", name, "", ""));
        }

        return text;
    }

    /// <summary>Something stands in at least one of these fields.</summary>
    public bool IsBegun(params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (Text(name).Length > 0)
            {
                return true;
            }
        }

        return false;
    }

    public bool Flag(string name) => Text(name) is "true" or "on";

    /// <summary>One of the ids made when the form was rendered, so that a double tap is one entry.</summary>
    public Guid Id(string name)
    {
        if (Guid.TryParse(Text(name), out var id))
        {
            return id;
        }

        Refuse(name, new Refusal("missing", name, "", ""));
        return default;
    }

    public Guid? IdOrNone(string name) => Guid.TryParse(Text(name), out var id) ? id : null;

    /// <summary>Several boxes ticked under one name.</summary>
    public Listed<Guid> Ids(string name) =>
        posted.TryGetValue(name, out var values)
            ? [.. values.Select(value => Guid.TryParse(value, out var id) ? id : default).Where(id => id != default)]
            : [];

    public TEnum Choice<TEnum>(string name)
        where TEnum : struct, Enum => ChoiceOrNone<TEnum>(name) ?? Missing<TEnum>(name);

    public TEnum? ChoiceOrNone<TEnum>(string name)
        where TEnum : struct, Enum =>
        Enum.TryParse<TEnum>(Text(name), ignoreCase: true, out var value) && Enum.IsDefined(value) ? value : null;

    public int Whole(string name) => (int)(Number(name, mustBeWhole: true) ?? Missing<double>(name));

    public int? WholeOrNone(string name) => (int?)Number(name, mustBeWhole: true);

    /// <summary>Whole numbers ticked under one name; anything else is none.</summary>
    public Listed<int> Wholes(string name) =>
        [
            .. Text(name)
                .Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Select(text => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0)
                .Where(number => number > 0),
        ];

    public double Figure(string name) => FigureOrNone(name) ?? Missing<double>(name);

    public double? FigureOrNone(string name) => Number(name, mustBeWhole: false);

    public Volume Litres(string name, string? stored = null) => LitresOrNone(name, stored) ?? Missing<Volume>(name);

    public Volume? LitresOrNone(string name, string? stored = null) =>
        Quantity(name, UnitSymbols.Volumes, stored ?? name + "_l", 0, 1_000_000) is var (value, unit)
            ? Volume.From(value, unit).ToUnit(VolumeUnit.Liter)
            : null;

    public Temperature Degrees(string name) => DegreesOrNone(name) ?? Missing<Temperature>(name);

    public Temperature? DegreesOrNone(string name) =>
        Quantity(name, UnitSymbols.Temperatures, name + "_c", -50, 300) is var (value, unit)
            ? Temperature.From(value, unit).ToUnit(TemperatureUnit.DegreeCelsius)
            : null;

    public Pressure Gauge(string name) => GaugeOrNone(name) ?? Missing<Pressure>(name);

    public Pressure? GaugeOrNone(string name) =>
        Quantity(name, UnitSymbols.Pressures, name + "_kpa_gauge", -200, 5_000) is var (value, unit)
            ? Pressure.From(value, unit).ToUnit(PressureUnit.Kilopascal)
            : null;

    public Length? LevelOrNone(string name) =>
        Quantity(name, UnitSymbols.Lengths, name + "_mm", 0, 20_000) is var (value, unit)
            ? Length.From(value, unit).ToUnit(LengthUnit.Millimeter)
            : null;

    public Length Level(string name) => LevelOrNone(name) ?? Missing<Length>(name);

    public Mass Grams(string name) => GramsOrNone(name) ?? Missing<Mass>(name);

    public Mass? GramsOrNone(string name, string? stored = null) =>
        Quantity(name, UnitSymbols.Masses, stored ?? name + "_g", 0, 1_000_000) is var (value, unit)
            ? Mass.From(value, unit).ToUnit(MassUnit.Gram)
            : null;

    public StockAmount Stock(string name) => StockOrNone(name) ?? Missing<StockAmount>(name);

    /// <summary>Of an item: the unit says whether it is counted, weighed or measured.</summary>
    public StockAmount? StockOrNone(string name)
    {
        var symbol = Text(name + ".unit");
        if (string.Equals(symbol, UnitSymbols.Pieces, StringComparison.Ordinal))
        {
            return Number(name, mustBeWhole: true) is { } pieces ? StockAmount.Of((int)pieces) : null;
        }

        if (UnitSymbols.Masses.ContainsKey(symbol))
        {
            return GramsOrNone(name, name) is { } mass ? StockAmount.Of(mass) : null;
        }

        return LitresOrNone(name, name) is { } volume ? StockAmount.Of(volume) : null;
    }

    public Duration? MinutesOrNone(string name) =>
        Quantity(name, UnitSymbols.Durations, name, 0, 100_000) is var (value, unit)
            ? Duration.From(value, unit).ToUnit(DurationUnit.Minute)
            : null;

    /// <summary>A gravity as read: "1.048" on the SG scale, or a figure in °P.</summary>
    public GravityRead? GravityOrNone(string name, Instrument instrument, Temperature? sample)
    {
        if (Quantity(name, UnitSymbols.Gravities, name, -10, 200) is not var (value, unit))
        {
            return null;
        }

        var scale = unit is GravityUnit.Plato ? GravityScale.Plato : GravityScale.Sg2020;
        return new GravityRead(value, scale, instrument, sample);
    }

    public SpecificGravity? SpecificGravityOrNone(string name)
    {
        if (Quantity(name, UnitSymbols.Gravities, name, -10, 200) is not var (value, unit))
        {
            return null;
        }

        var read = unit is GravityUnit.Plato ? new DegreesPlato(value).ToGravity() : SpecificGravity.Parse(Text(name));
        return read.Gives(out var gravity) ? gravity : Refuse(name, read.Refusal);
    }

    /// <summary>Gas in the beer, as it is to be or was measured.</summary>
    public CarbonDioxideContent? CarbonDioxideOrNone(string name)
    {
        if (Quantity(name, UnitSymbols.CarbonDioxide, name, 0, 30) is not var (value, unit))
        {
            return null;
        }

        var read = UnitSymbols.Gas(value, unit);
        return read.Gives(out var gas) ? gas : Refuse(name, read.Refusal);
    }

    /// <summary>A typed minute of the site that can't be left out.</summary>
    public DateTimeOffset MomentOf(string name) => MomentOrNone(name) ?? Missing<DateTimeOffset>(name);

    /// <summary>A typed minute of the site; nothing typed, or left as it was shown: null, the database's clock.</summary>
    public DateTimeOffset? MomentOrNone(string name)
    {
        var text = Text(name);
        if (text.Length == 0 || string.Equals(text, Text(name + ".shown"), StringComparison.Ordinal))
        {
            return null;
        }

        var read = times.Parse(text);
        return read.Gives(out var at) ? at : Refuse(name, read.Refusal);
    }

    public DateOnly? DayOrNone(string name) =>
        Text(name).Length == 0 ? null
        : DateOnly.TryParseExact(
            Text(name),
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var day
        )
            ? day
        : Refuse(name, new Refusal("not-a-day", name, "", ""));

    /// <summary>Says under a field what is wrong with it; the first problem of a field stands.</summary>
    public Unread Refuse(string name, Refusal? refusal)
    {
        _problems.TryAdd(name, refusal ?? new Refusal("missing", name, "", ""));
        return default;
    }

    private double? Number(string name, bool mustBeWhole)
    {
        if (Text(name).Length == 0)
        {
            return null;
        }

        var read = TypedNumber.Parse(Text(name));
        if (!read.Gives(out var value))
        {
            return Refuse(name, read.Refusal);
        }

        return mustBeWhole && (value != Math.Truncate(value) || Math.Abs(value) > int.MaxValue)
            ? Refuse(name, new Refusal("not-whole", name, "", ""))
            : value;
    }

    // Limits are on the figure in its own unit: wide enough for any unit, narrow enough that a slip of the thumb is asked again.
    private (double Value, TUnit Unit)? Quantity<TUnit>(
        string name,
        IReadOnlyDictionary<string, TUnit> units,
        string stored,
        double lowest,
        double highest
    )
        where TUnit : struct, Enum
    {
        if (FigureOrNone(name) is not { } value)
        {
            return null;
        }

        var symbol = Text(name + ".unit");
        if (!units.TryGetValue(symbol, out var unit))
        {
            Refuse(name, new Refusal("unknown-unit", symbol, string.Join(", ", units.Keys), ""));
            return null;
        }

        if (value < lowest || value > highest)
        {
            Refuse(name, new Refusal("out-of-range", name, $"{lowest}", $"{highest}", symbol));
            return null;
        }

        // A field may be read twice: as a reading and as what the batch began with.
        if (!_typed.Any(typed => string.Equals(typed.Field, stored, StringComparison.Ordinal)))
        {
            _typed.Add(new TypedText(stored, $"{Text(name)} {symbol}"));
        }

        return (value, unit);
    }

    private T Missing<T>(string name)
        where T : struct
    {
        Refuse(name, new Refusal("missing", name, "", ""));
        return default;
    }
}
