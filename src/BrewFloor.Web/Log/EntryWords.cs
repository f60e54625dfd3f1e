using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using UnitsNet;

namespace BrewFloor.Web.Log;

/// <summary>An entry in a few words, numbers first: "Gravity 1.019", "Dumped trub, 1.6 L".</summary>
public static class EntryWords
{
    public static string What(TimelineLine line, Wording words)
    {
        var (entry, kind) = (line.Entry, line.Kind);
        var detail = (Between(line, words) ?? Detail(entry, words)) + FromStock(entry, words);
        return detail.Length == 0 ? words.Happened(kind)
            : detail.StartsWith(':') ? words.Happened(kind) + detail
            : $"{words.Happened(kind)} {detail}";
    }

    // What moves from one thing to another says from which to which.
    private static string? Between(TimelineLine line, Wording words)
    {
        var f = words.Figures;
        return line.Entry switch
        {
            Racked e => words.Entry(
                "line.racked",
                new("volume", e.Volume),
                new("from", Called(e.FromId)),
                new("to", Called(e.ToId))
            ),
            Pitched { Cultures.Count: > 0 } e => string.Join(
                ", ",
                e.Cultures.Select(c => $"{f.Of(c.Amount)} {Called(c.CultureId)}")
            ) + (e.Words is { } said ? $"; {said}" : ""),
            _ => null,
        };

        string Called(Guid id) => line.Things.GetValueOrDefault(id) ?? "?";
    }

    private static string FromStock(LogEntry entry, Wording words) =>
        entry is ITakesStock { Used: { Count: > 0 } used }
            ? words.Entry(
                "line.from-stock",
                new Number("amounts", string.Join(", ", used.Select(one => words.Figures.Of(one.Amount))))
            )
            : "";

    private static string Detail(LogEntry entry, Wording words) =>
        OfBeer(entry, words)
        ?? OfTank(entry, words)
        ?? OfCleaning(entry, words)
        ?? OfYeast(entry, words)
        ?? OfItems(entry, words)
        ?? OfLog(entry, words)
        ?? "";

    private static string? OfBeer(LogEntry entry, Wording words)
    {
        var f = words.Figures;
        return entry switch
        {
            Filled e => Parts(e.NewBatch?.Name, f.Of(e.Volume), e.Gravity is { } g ? Gravity(g, words) : null),
            ToppedUp e => f.Of(e.Volume),
            FillPlanned e => $"{f.Of(e.Volume)}, {f.Moment(e.PlannedAt)}",
            LevelMeasured e => f.Of(e.Volume),
            Emptied e => e.Heel.Liters > 0 ? words.Entry("line.heel", new Number("heel", e.Heel)) : "",
            GravityTaken e => Gravity(e.Read, words),
            PhTaken e => f.Of(e.Ph),
            Packaged e => string.Join(", ", [f.Of(e.Volume), .. e.Containers.Select(c => Containers(c, words))]),
            Discarded e => $"{f.Of(e.Volume)}: {e.Why}",
            Dumped e => $"{Low("choice.Sediment." + e.What, words)}, {f.Of(e.Volume)}",
            DryHopped e => $"{f.Of(e.Mass)} {e.Material}",
            BatchTakenOver e => e.Volume is { } volume ? f.Of(volume) : "",
            _ => null,
        };
    }

    private static string? OfTank(LogEntry entry, Wording words)
    {
        var f = words.Figures;
        return entry switch
        {
            TemperatureTaken e => f.Of(e.Temperature),
            PressureTaken e => f.Of(e.Pressure),
            TemperatureSet e => f.Of(e.Temperature),
            PressureSet e => f.Of(e.Pressure),
            PutOutOfService e => $": {e.Why}",
            PutBackInService e => $": {e.Why}",
            Opened e => e.What ?? "",
            Closed e => Low("choice.Closure." + e.Closure, words),
            Purged e => words.Entry("choice.Gas." + e.Gas),
            LeakTested e => Passed(e.Passed, words),
            ReliefValveTested e => Parts(e.OpenedAt is { } at ? f.Of(at) : null, Passed(e.Passed, words)),
            PressureTested e => Passed(e.Passed, words),
            ProbeCalibrated e => $"{e.What}, {Passed(e.Passed, words)}",
            GasketChanged e => e.What,
            PartsTakenOff e => e.Parts,
            Refitted e => e.Parts,
            _ => null,
        };
    }

    private static string? OfCleaning(LogEntry entry, Wording words) =>
        entry switch
        {
            Washed e => Parts(
                Low("choice.Agent." + e.Cleaner, words),
                Low("choice.Way." + e.How, words),
                Solution(e.Concentration, e.Temperature, e.Minutes, words)
            ),
            Sanitized e => Parts(
                Low("choice.Agent." + e.Agent, words),
                Low("choice.Way." + e.How, words),
                Solution(e.Concentration, e.Temperature, e.Minutes, words)
            ),
            Drained e => Low("choice.Closure." + e.Held, words),
            Inspected e => Parts(
                Low("choice.InspectedHow." + e.How, words),
                e.Value is { } value ? words.Figures.Of(value) : null,
                Passed(e.Passed, words)
            ),
            Passivated e => Parts(
                Low("choice.BathKind." + e.Bath, words),
                Solution(e.Concentration, e.Temperature, e.Minutes, words)
            ),
            Triggered e => Low("choice.Trigger." + e.By, words),
            Exposed e => e.What,
            _ => null,
        };

    private static string? OfYeast(LogEntry entry, Wording words)
    {
        var f = words.Figures;
        return entry switch
        {
            Pitched e => e.Words,
            Harvested e => string.Join(", ", e.Cuts.Select(c => f.Of(c.Volume))),
            CultureReceived e => f.Of(e.Amount),
            CultureTakenOver e => f.Of(e.Amount),
            Counted e => words.Entry("line.viability", new Number("share", $"{Share(e):0} %")),
            CultureDiscarded e => $": {e.Why}",
            _ => null,
        };
    }

    private static string? OfItems(LogEntry entry, Wording words)
    {
        var f = words.Figures;
        return entry switch
        {
            ItemReceived e => f.Of(e.Amount),
            ItemCounted e => f.Of(e.Amount),
            ItemUsed e => e.What is { } what ? $"{f.Of(e.Amount)}: {what}" : f.Of(e.Amount),
            ItemDiscarded e => $"{f.Of(e.Amount)}: {e.Why}",
            _ => null,
        };
    }

    private static string? OfLog(LogEntry entry, Wording words) =>
        entry switch
        {
            Allowed e => $"{words.InSentence(words.Happened(e.EntryKind))}: {e.Reason}",
            Answered e => $": {e.Words}",
            Corrected e => $": {e.Reason}",
            Struck e => $": {e.Reason}",
            _ => null,
        };

    private static string? Solution(
        string? concentration,
        Temperature? temperature,
        Duration? minutes,
        Wording words
    ) =>
        Parts(
            concentration,
            temperature is { } warm ? words.Figures.Of(warm) : null,
            minutes is { } contact ? words.Figures.Of(contact) : null
        )
            is { Length: > 0 } said
            ? said
            : null;

    private static string Parts(params string?[] parts) => string.Join(", ", parts.OfType<string>());

    // "12 × 30 L keg"
    private static string Containers(Containers packed, Wording words) =>
        $"{packed.Count} × {words.Figures.Of(packed.Size)} {Low("choice.ContainerKind." + packed.Kind, words)}";

    private static string Low(string key, Wording words) => words.InSentence(words.Entry(key));

    private static string Passed(bool passed, Wording words) => Low(passed ? "choice.passed" : "choice.failed", words);

    private static double Share(Counted counted) =>
        counted.Live + counted.Dead == 0 ? 0 : 100.0 * counted.Live / (counted.Live + counted.Dead);

    // As it was read: the corrected value stands on the curve. On a scale the reader doesn't use, both are said.
    private static string Gravity(GravityRead read, Wording words)
    {
        var asRead =
            read.Scale is GravityScale.Plato
                ? read.Value.ToString("0.0", words.Figures.Culture) + "\u00a0°P"
                : read.Value.ToString("0.000#", words.Figures.Culture);
        var isOfTheReader = (read.Scale is GravityScale.Plato) == (words.Figures.Units.Gravity is GravityUnit.Plato);
        return isOfTheReader || read.Gravity20 is not { } gravity
            ? asRead
            : words.Entry("line.read-as", new("gravity", gravity), new("read", asRead));
    }
}
