using System.Globalization;
using System.Reflection;
using System.Text;
using BrewFloor.Domain;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Tanks;
using BrewFloor.Web.Units;
using UnitsNet;

namespace BrewFloor.Web.Log;

/// <summary>Turns an entry back into what its form would hold, so that a correction starts from what was logged.</summary>
/// <remarks>
/// A field is named as the entry's property ("opened-at" for <c>OpenedAt</c>, "purged" for <c>IsPurged</c>); the few that aren't
/// stand below. Quantities come back in the reader's units.
/// </remarks>
public static class FormWriter
{
    private static readonly Dictionary<string, string> OtherNames = new(StringComparer.Ordinal)
    {
        ["Racked.ToId"] = "to",
        ["Filled.BatchId"] = "batch",
        ["FillPlanned.BatchId"] = "batch",
        ["TankTakenOver.IsNeverPassivated"] = "never",
        ["Drained.IsUnderCarbonDioxide"] = "under-co2",
        ["Purged.Pressure"] = "pressure",
        ["CultureTakenOver.GenerationAtLeast"] = "generation",
        ["CultureTakenOver.StoredAt"] = "stored",
        ["CultureReceived.StoredAt"] = "stored",
        ["Harvested.StoredAt"] = "stored",
    };

    /// <summary>Every field of the entry's form by its posted name.</summary>
    public static IReadOnlyDictionary<string, string> Write(LogEntry entry, Figures figures)
    {
        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var property in entry.GetType().GetProperties(BindingFlags.Instance | BindingFlags.Public))
        {
            if (property.DeclaringType != typeof(LogEntry) && property.GetValue(entry) is { } value)
            {
                Write(fields, NameOf(entry.GetType(), property.Name), value, figures);
            }
        }

        switch (entry)
        {
            case Racked { IsRest: false }:
                fields["part"] = "true";
                break;
            case TankTakenOver taken:
                fields["mixed-culture"] = taken.ExposedTo.Contains(ExposureKind.MixedCulture) ? "true" : "";
                fields["allergen"] = taken.ExposedTo.Contains(ExposureKind.Allergen) ? "true" : "";
                break;
            // The original gravity was taken from the reading: it follows when the reading is put right.
            case Filled { NewBatch.OriginalGravity: { } original, Gravity.Gravity20: { } read } when original == read:
                fields.Remove("original");
                break;
            case Allowed allowed:
                fields["codes"] = string.Join(',', allowed.Codes);
                fields["kind"] = allowed.EntryKind;
                break;
        }

        return fields;
    }

    private static void Write(Dictionary<string, string> fields, string name, object value, Figures figures)
    {
        if (Quantity(value, figures.Units) is { } quantity)
        {
            With(fields, name, quantity.Value, quantity.Unit);
            return;
        }

        switch (value)
        {
            case GravityRead read:
                Write(fields, read, figures);
                break;
            case bool flag:
                fields[name] = FlagOf(name, flag);
                break;
            case YeastAmount amount:
                Write(fields, "", amount);
                break;
            case DateTimeOffset at:
                fields[name] = new SiteTimes(figures.Zone, at, figures.Culture).Typed(at);
                break;
            case DateOnly day:
                fields[name] = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
                break;
            case Listed<int> ticked:
                fields[name] = string.Join(',', ticked);
                break;
            case Listed<Used> or Listed<Fitting> or Listed<Containers> or Listed<CulturePitched> or Listed<CutTaken>:
                WriteRows(fields, name, value, figures);
                break;
            case NewBatch brought:
                Write(fields, brought);
                break;
            case NewCulture or NewItem:
                break; // what was brought into being stays; it is edited on its own page
            default:
                fields[name] = Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
                break;
        }
    }

    private static string FlagOf(string name, bool flag) =>
        (name, flag) switch
        {
            ("passed", true) => "yes",
            ("passed", false) => "no",
            (_, true) => "true",
            _ => "",
        };

    private static (double Value, string Unit)? Quantity(object value, ReadingUnits units) =>
        value switch
        {
            Volume volume => (volume.As(units.Volume), UnitSymbols.Of(units.Volume)),
            Temperature temperature => (temperature.As(units.Temperature), UnitSymbols.Of(units.Temperature)),
            Pressure pressure => (pressure.As(units.Pressure), UnitSymbols.Of(units.Pressure)),
            Length length => (length.As(units.Length), UnitSymbols.Of(units.Length)),
            Mass mass => (mass.Grams, "g"),
            Duration duration => (duration.Minutes, "min"),
            StockAmount amount => (amount.Value, amount.Measure.Unit()),
            _ => null,
        };

    private static void WriteRows(Dictionary<string, string> fields, string name, object rows, Figures figures)
    {
        foreach (
            var (row, index) in ((System.Collections.IEnumerable)rows)
                .Cast<object>()
                .Select((row, index) => (row, index))
        )
        {
            var start = $"{name}.{index}.";
            switch (row)
            {
                case Fitting fitting:
                    FittingFields.Write(fields, start, fitting);
                    break;
                case Containers containers:
                    fields[start + "kind"] = containers.Kind.ToString();
                    fields[start + "count"] = containers.Count.ToString(CultureInfo.InvariantCulture);
                    Write(fields, start + "size", containers.Size, figures);
                    break;
                case CulturePitched pitched:
                    fields[start + "culture"] = pitched.CultureId.ToString();
                    Write(fields, start, pitched.Amount);
                    break;
                case Used used:
                    fields[start + "item"] = used.ItemId.ToString();
                    Write(fields, start + "amount", used.Amount, figures);
                    break;
                case CutTaken cut:
                    fields[$"new.{index}"] = cut.NewCulture.Id.ToString();
                    Write(fields, start, cut);
                    break;
            }
        }
    }

    private static void Write(Dictionary<string, string> fields, string start, CutTaken cut)
    {
        fields[start + "cut"] = cut.Cut.ToString();
        fields["strain"] = cut.NewCulture.Strain;
        With(fields, start + "volume", cut.Volume.Milliliters, "mL");
        if (cut.Density is { } density)
        {
            fields[start + "density"] = density.GramsPerMilliliter.ToString("0.####", CultureInfo.InvariantCulture);
        }
    }

    private static void Write(Dictionary<string, string> fields, NewBatch brought)
    {
        fields["allergens"] = string.Join(", ", brought.Allergens);
        if (brought.OriginalGravity is { } original)
        {
            With(fields, "original", original.Value, "SG");
        }
    }

    private static void Write(Dictionary<string, string> fields, GravityRead read, Figures figures)
    {
        With(fields, "gravity", read.Value, read.Scale is GravityScale.Plato ? "°P" : "SG");
        fields["instrument"] = read.Instrument.ToString();
        if (read.Sample is { } sample)
        {
            Write(fields, "sample", sample, figures);
        }
    }

    private static void Write(Dictionary<string, string> fields, string start, YeastAmount amount) =>
        With(fields, start + (amount.IsMass ? "grams" : "amount"), amount.Value, amount.IsMass ? "g" : "mL");

    private static void With(Dictionary<string, string> fields, string name, double value, string unit)
    {
        fields[name] = value.ToString("0.#####", CultureInfo.InvariantCulture);
        fields[name + ".unit"] = unit;
    }

    private static string NameOf(Type kind, string property)
    {
        if (OtherNames.TryGetValue($"{kind.Name}.{property}", out var other))
        {
            return other;
        }

        var bare =
            property.StartsWith("Is", StringComparison.Ordinal) && char.IsUpper(property[2]) ? property[2..] : property;
        var name = new StringBuilder();
        foreach (var letter in bare)
        {
            if (char.IsUpper(letter) && name.Length > 0)
            {
                name.Append('-');
            }

            name.Append(char.ToLowerInvariant(letter));
        }

        return name.ToString();
    }
}
