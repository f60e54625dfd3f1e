using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Tanks;

/// <summary>What a page says of a tank, in words and figures.</summary>
public static class BayWords
{
    /// <summary>"214 Kitchen-table pale", or what else is in it.</summary>
    public static string Heading(Bay bay, Wording words) =>
        bay is { State.HoldsBeer: true, Batch: { } batch }
            ? words["bay-batch", new("number", batch.Number), new("name", batch.Name)]
            : bay.State.Contents.What switch
            {
                Holding.Nothing => words["bay-empty"],
                Holding.Unknown or Holding.Beer => words["bay-unknown"],
                var what => words["bay-" + what],
            };

    /// <summary>"Fermenting, day 4", "Soiled since Thu 12 Mar, 13:10".</summary>
    public static string State(Bay bay, Wording words) =>
        bay.State.OutOfService is { } off ? words["state-out", new Number("why", off.Why)]
        : bay.Stage is { } stage ? StageOf(bay, stage, words)
        : words[
            "state-soil-" + bay.Soil,
            new("since", bay.State.SoilSince.At),
            new("until", bay.State.SanitizedUntil(bay.Rules))
        ];

    public static MarkKind? StateMark(Bay bay) =>
        bay.IsOutOfService ? MarkKind.OutOfService
        : bay.Stage is { } stage ? Enum.Parse<MarkKind>(stage.ToString())
        : bay.Soil switch
        {
            Soil.Soiled => MarkKind.Soiled,
            Soil.Rinsed => MarkKind.Rinsed,
            Soil.Clean => MarkKind.Clean,
            Soil.Sanitized => MarkKind.Sanitized,
            _ => null,
        };

    /// <summary>"1.047 · 23.8 °C".</summary>
    public static string Numbers(Bay bay, Wording words)
    {
        var parts = new List<string>();
        if (bay.Stage is not null && bay.BatchState is { Gravities: { Count: > 0 } gravities })
        {
            parts.Add(words.Figures.Of(gravities[^1].Gravity));
        }

        if (bay.State is { HoldsBeer: true, Temperature: { } temperature })
        {
            parts.Add(words.Figures.Of(temperature.Value));
        }

        return string.Join(" · ", parts);
    }

    /// <summary>"Wash, 52 min over", "Dump trub, since 10:30", "Take gravity, tomorrow 18:10".</summary>
    public static string Due(ShownJob job, DateTimeOffset now, Wording words) =>
        job.At(now) switch
        {
            Urgency.Overdue => words[
                "due-overdue",
                new("verb", words.Verb(job.Job)),
                new("over", now - job.Job.OverdueAt)
            ],
            Urgency.Due => words["due-due", new("verb", words.Verb(job.Job)), new("at", When(job.Job.DueAt, words))],
            _ => words[
                "due-soon",
                new("verb", words.Verb(job.Job)),
                new("at", When(job.Open.PutOffUntil ?? job.Job.DueAt, words))
            ],
        };

    // A job of the calendar is due on a day: its midnight says nothing.
    private static string When(DateTimeOffset at, Wording words) =>
        words.Figures.Local(at).TimeOfDay == TimeSpan.Zero
            ? words.Figures.Day(words.Figures.DayOf(at))
            : words.Figures.Moment(at);

    public static MarkKind UrgencyMark(Urgency urgency) =>
        urgency switch
        {
            Urgency.Overdue => MarkKind.Overdue,
            Urgency.Due => MarkKind.Due,
            _ => MarkKind.Soon,
        };

    private static string StageOf(Bay bay, Stage stage, Wording words)
    {
        var since = bay.BatchState!.Filled?.At ?? bay.State.Contents.Since.At;
        var day = (bay.Rules.DateOf(bay.Now).DayNumber - bay.Rules.DateOf(since).DayNumber) + 1;
        var far = bay.HowFar;
        return words[
            stage is Stage.Fermenting && far is not null ? "state-stage-FermentingFar" : "state-stage-" + stage,
            new("at", since),
            new("day", day),
            new("far", far is { } share ? words.Figures.Share(share) : null)
        ];
    }
}
