using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Jobs;

/// <summary>From a job to the form of the entry that gets it done.</summary>
public static class JobWays
{
    private static readonly Dictionary<string, string> Kinds = new(StringComparer.Ordinal)
    {
        ["re-passivate"] = "passivated",
        ["wash-soiled-tank"] = "cleaned",
        ["drain-sanitizer"] = "drained",
        ["record-air-drying"] = "air-dried",
        ["dump-trub"] = "dumped?what=Trub",
        ["dump-yeast"] = "dumped?what=Yeast",
        ["gravity"] = "gravity",
        ["harvest-yeast"] = "harvested",
        ["lower-pressure"] = "vented",
        ["close-valve"] = "pressure-set",
        ["test-relief-valve"] = "relief-valve-tested",
        ["count-culture"] = "counted",
        ["use-or-discard-culture"] = "culture-discarded",
        ["buy-more"] = "item-received",
    };

    public static string? HrefOf(ShownJob open)
    {
        if (open.Job.Rule is "answer-for-it")
        {
            return $"entries/{open.Job.Cause}/answer";
        }

        return Kinds.GetValueOrDefault(open.Job.Rule) is not { } kind ? null
            : open.Job.Subject.Kind is SubjectKind.Culture ? $"yeast/{open.CultureNumber}/log/{kind}"
            : open.Job.Subject.Kind is SubjectKind.Item ? $"items/{open.ItemNumber}/log/{kind}"
            : open.TankCode is { } code ? $"tanks/{code}/log/{kind}"
            : null;
    }
}
