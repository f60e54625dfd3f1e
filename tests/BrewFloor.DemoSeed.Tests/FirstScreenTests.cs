using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Jobs;

namespace BrewFloor.DemoSeed.Tests;

/// <summary>What the floor shows, at every hour of odd and ordinary days.</summary>
public class FirstScreenTests
{
    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void K1_ferments_and_was_read_today(string zone, string day) =>
        AtAllHours(
            zone,
            day,
            seen =>
            {
                var (thing, beer) = seen.BeerIn("K1");
                Assert.Equal(Stage.Fermenting, beer.StageOf(thing, seen.Rules));
                Assert.InRange(beer.HowFar(thing)!.Value, 0.3, 0.95);
                Assert.Equal(seen.Today, seen.Rules.DateOf(beer.Gravities[^1].Moment.At));
            }
        );

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void P1_is_finished_and_cold(string zone, string day) =>
        AtAllHours(
            zone,
            day,
            seen =>
            {
                var (thing, beer) = seen.BeerIn("P1");
                Assert.Equal(Stage.Cold, beer.StageOf(thing, seen.Rules));
                Assert.NotNull(beer.FinishedAt(thing, seen.Rules));
            }
        );

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void B1_is_soiled_and_its_wash_is_overdue(string zone, string day) =>
        AtAllHours(
            zone,
            day,
            seen =>
            {
                Assert.Equal(Soil.Soiled, seen.SoilOf("B1"));
                Assert.Equal(Urgency.Overdue, seen.JobOn("B1", WashSoiledTank.Rule));
            }
        );

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void P2_is_sanitized(string zone, string day) =>
        AtAllHours(zone, day, seen => Assert.Equal(Soil.Sanitized, seen.SoilOf("P2")));

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void K3_alone_is_overdue_for_passivation(string zone, string day) =>
        AtAllHours(zone, day, seen => Assert.Equal(["K3"], seen.TanksWith(Repassivate.Rule, Urgency.Overdue)));

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void The_trub_in_K2_is_due(string zone, string day) =>
        AtAllHours(
            zone,
            day,
            seen =>
            {
                Assert.False(seen.BeerIn("K2").State.IsFermentingHard(seen.Rules, seen.Now));
                Assert.Equal(Urgency.Due, seen.JobOn("K2", DumpTrub.Rule));
            }
        );

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void B2_is_out_of_service_for_a_reason(string zone, string day) =>
        AtAllHours(
            zone,
            day,
            seen =>
                Assert.Equal(
                    ["B2"],
                    seen.Floor.Tanks.Where(t => !string.IsNullOrWhiteSpace(t.State.OutOfService?.Why))
                        .Select(t => t.Thing.Code)
                )
        );

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void What_was_done_anyway_on_E1_waits_for_its_answer(string zone, string day) =>
        AtAllHours(
            zone,
            day,
            seen =>
            {
                Assert.Equal(
                    ["E1"],
                    seen.Floor.Tanks.Where(t => t.State.Unanswered is not []).Select(t => t.Thing.Code)
                );
                Assert.Equal(Urgency.Due, seen.JobOn("E1", AnswerForIt.Rule));
            }
        );

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void One_jar_of_slurry_is_stale(string zone, string day) =>
        AtAllHours(
            zone,
            day,
            seen =>
                Assert.Single(
                    seen.Floor.Cultures,
                    c =>
                        seen.Jobs(c.State.Subject, UseOrDiscardCulture.Rule)
                            .Any(u => u is Urgency.Due or Urgency.Overdue)
                )
        );

    private static void AtAllHours(string zoneId, string day, Action<Seen> look)
    {
        foreach (var seen in Seen.On(day, TimeZoneInfo.FindSystemTimeZoneById(zoneId)))
        {
            look(seen);
        }
    }
}
