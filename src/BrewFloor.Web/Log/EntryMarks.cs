using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Tanks;

namespace BrewFloor.Web.Log;

/// <summary>The mark beside a verb, and the line below it.</summary>
public static class EntryMarks
{
    public static MarkKind Of(string kind) =>
        kind switch
        {
            "gravity" or "ph" => MarkKind.Gravity,
            "temperature" or "temperature-set" => MarkKind.Temperature,
            "pressure" or "pressure-set" => MarkKind.Pressure,
            "dumped" => MarkKind.Dump,
            "washed" or "rinsed" or "cleaned" or "inspected" => MarkKind.Wash,
            "sanitized" or "drained" => MarkKind.Sanitized,
            "passivated" or "air-dried" => MarkKind.Acid,
            "filled" or "topped-up" or "fill-planned" => MarkKind.Fill,
            "racked" => MarkKind.Rack,
            "pitched" or "harvested" or "counted" => MarkKind.Pitch,
            "packaged" => MarkKind.Package,
            "opened" or "closed" or "vented" or "aired" or "purged" => MarkKind.Valve,
            "out-of-service" or "back-in-service" => MarkKind.OutOfService,
            _ => MarkKind.Note,
        };

    /// <summary>"Last 1.019 at 08:10."</summary>
    public static string? Below(string kind, Bay bay, Wording words) =>
        kind switch
        {
            "gravity" when bay.BatchState is { Gravities: { Count: > 0 } all } => words[
                "below-last",
                new("value", all[^1].Gravity),
                new("at", all[^1].Moment.At)
            ],
            "temperature" when bay.State.Temperature is { } read => words[
                "below-last",
                new("value", read.Value),
                new("at", read.Moment.At)
            ],
            "pressure" when bay.State.Pressure is { } read => words[
                "below-last",
                new("value", read.Value),
                new("at", read.Moment.At)
            ],
            "dumped" when bay.BatchState is { Dumps: { Count: > 0 } all } => words[
                "below-last",
                new("value", all[^1].Volume),
                new("at", all[^1].Moment.At)
            ],
            "filled" when bay.State.Planned is { } planned => words[
                "below-planned",
                new("volume", planned.Volume),
                new("at", planned.At)
            ],
            _ => null,
        };
}
