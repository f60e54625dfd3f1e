using BrewFloor.Domain;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;

namespace BrewFloor.DemoSeed.Tests;

public class LogTests
{
    private static readonly DemoScenario Scenario = DemoScenario.For(Moments.Afternoon, Moments.Berlin);

    private static readonly Lazy<Played> Whole = new(() => new(Scenario, Moments.Berlin));

    [Fact]
    public void The_floor_lets_every_entry_in_by_its_answer() => AllowedOn(Whole.Value);

    [Theory]
    [MemberData(nameof(Moments.OfZonesAndDays), MemberType = typeof(Moments))]
    public void The_floor_lets_every_entry_in_on_odd_days_too(string zone, string day) =>
        AllowedOn(Seen.Whole(day, TimeZoneInfo.FindSystemTimeZoneById(zone)));

    [Fact]
    public void A_log_without_its_washes_is_refused()
    {
        var unwashed = Scenario with { Log = [.. Scenario.Log.Where(line => line.Entry is not Washed)] };
        Assert.NotEmpty(new Played(unwashed, Moments.Berlin).Refused);
    }

    [Fact]
    public void Three_entries_were_written_over_a_stop_and_one_past_a_caution()
    {
        var objected = Whole.Value.Objected;
        Assert.Equal(3, objected.Count(words => words.Contains("Stop sanitizing-lapsed", StringComparison.Ordinal)));
        Assert.Single(objected, words => words.Contains("Caution containers-not-purged", StringComparison.Ordinal));
        Assert.True(objected.Count is 4, string.Join('\n', objected));
    }

    [Fact]
    public void Entries_stand_in_order_in_whole_microseconds_of_UTC_and_none_is_ahead()
    {
        LogEntry[] entries = [.. Scenario.Log.Select(line => line.Entry)];
        Assert.Equal(entries.Select(e => e.At).Order(), entries.Select(e => e.At));
        Assert.All(entries, e => Assert.Equal(TimeSpan.Zero, e.At.Offset));
        Assert.All(entries, e => Assert.Equal(0, e.At.Ticks % TimeSpan.TicksPerMicrosecond));
        Assert.True(entries[^1].At <= Moments.Afternoon);
        Assert.InRange((Moments.Afternoon - entries[0].At).TotalDays, 725, 735);
    }

    [Fact]
    public void No_id_comes_twice()
    {
        Guid[] ids =
        [
            .. Scenario.Log.Select(line => line.Entry.Id),
            .. Scenario.Tanks.Select(tank => tank.Id),
            .. Scenario.People.Select(person => person.Id),
            .. Whole.Value.Floor.Batches.Select(batch => batch.Thing.Id),
            .. Whole.Value.Floor.Cultures.Select(culture => culture.Thing.Id),
            .. Whole.Value.Floor.Items.Select(item => item.Thing.Id),
        ];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.DoesNotContain(Guid.Empty, ids);
    }

    [Fact]
    public void A_later_hour_of_the_same_day_only_adds_to_the_log()
    {
        var morning = DemoScenario.For(Moments.Afternoon.AddHours(-8), Moments.Berlin);
        Assert.Equal(morning.Log, Scenario.Log.Take(morning.Log.Count));
        Assert.InRange(morning.Log.Count, Scenario.Log.Count - 20, Scenario.Log.Count);
    }

    [Fact]
    public void Another_day_has_the_same_story_with_other_ids()
    {
        var tomorrow = DemoScenario.For(Moments.Afternoon.AddDays(1), Moments.Berlin);
        Assert.Equal(Scenario.Log.Select(KindOf), tomorrow.Log.Select(KindOf));
        Assert.Empty(Scenario.Log.Select(line => line.Entry.Id).Intersect(tomorrow.Log.Select(line => line.Entry.Id)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(500)]
    public void In_groups_it_is_the_same_log_and_none_names_an_entry_of_its_own_group_or_one_twice(int most)
    {
        var groups = Scenario.Groups(most).ToArray();
        Assert.Equal(Scenario.Log, groups.SelectMany(group => group));
        Assert.All(groups, group => Assert.InRange(group.Count, 1, most));
        Assert.All(
            groups,
            group =>
            {
                var named = group.SelectMany(l => Named(l.Entry)).ToArray();
                Assert.Empty(named.Intersect(group.Select(l => l.Entry.Id)));
                Assert.Equal(named.Distinct(), named);
            }
        );
    }

    [Fact]
    public void There_is_enough_to_look_at()
    {
        var floor = Whole.Value.Floor;
        Assert.InRange(floor.Batches.Count, 30, 45);
        Assert.InRange(floor.Cultures.Count, 20, 60);
        Assert.Equal(6, floor.Cultures.Max(culture => culture.State.Generation));
        Assert.Equal(EntryKinds.ByName.Keys.Order(), Scenario.Log.Select(KindOf).Distinct().Order());
        Assert.Equal(6, floor.Items.Count);
        var low = Assert.Single(floor.Items, i => !i.State.Amount!.Value.IsMoreThan(i.Thing.ReorderAt!.Value));
        Assert.Equal(StockAmount.Of(2), low.State.Amount);
        Assert.Equal(5, Scenario.People.Count);
        Assert.Equal(9, Scenario.Tanks.Count);
        Assert.Equal(5, Scenario.Tanks.Select(tank => tank.Type).Distinct().Count());
    }

    [Fact]
    public void Nobody_writes_what_is_not_theirs_to_write()
    {
        var roles = Scenario.People.ToDictionary(person => person.Id, person => person.Role);
        var written = Scenario.Log.ToDictionary(line => line.Entry.Id);
        var rules = Whole.Value.Rules;
        Assert.Empty(
            Scenario.Log.SelectMany(line =>
                Authority.Objections(
                    new(line.LoggedBy, roles[line.LoggedBy]),
                    line.Entry,
                    line.Entry.At,
                    rules,
                    [.. Mended(line.Entry).Select(id => written[id]).Select(AsLogged)]
                )
            )
        );
        Assert.Equal(4, Scenario.Log.Select(line => line.LoggedBy).Distinct().Count()); // the viewer only looks on
    }

    private static void AllowedOn(Played played) =>
        Assert.True(played.Refused.Count is 0, string.Join('\n', played.Refused));

    private static string KindOf((LogEntry Entry, Guid LoggedBy, Answer Answer) line) => EntryKinds.NameOf(line.Entry);

    private static Listed<Guid> Mended(LogEntry entry) =>
        entry switch
        {
            Corrected corrected => [corrected.Entry],
            Struck struck => struck.Entries,
            _ => [],
        };

    private static Listed<Guid> Named(LogEntry entry) => entry is Answered answered ? [answered.Entry] : Mended(entry);

    private static Logged AsLogged((LogEntry Entry, Guid LoggedBy, Answer Answer) line) =>
        new(line.Entry.Id, KindOf(line), line.LoggedBy, line.Entry.At);
}
