using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Striking and correcting.</summary>
public class MendingTests
{
    private static readonly Filled Filled = On(1, new Filled(K3.Id, Batch118.Id, Litres(90)));
    private static readonly Logged Known = new(Filled.Id, "filled", Guid.Empty, Day(1));

    [Fact]
    public void An_entry_that_stands_can_be_struck_and_corrected()
    {
        Assert.Empty(Mending.Objections(Correction(80), Known));
        Assert.Empty(Mending.Objections(Strike(Filled.Id), [Known]));
    }

    [Fact]
    public void An_entry_nobody_knows_cannot_be_mended()
    {
        Assert.Equal(["no-such-entry"], Mending.Objections(Correction(80), null).Select(o => o.Code));
        Assert.Equal(["no-such-entry"], Mending.Objections(Strike(Filled.Id), []).Select(o => o.Code));
    }

    [Fact]
    public void A_struck_entry_stays_struck()
    {
        var struck = Known with { IsStruck = true };

        Assert.Equal(["entry-struck"], Mending.Objections(Correction(80), struck).Select(o => o.Code));
        Assert.Equal(["entry-struck"], Mending.Objections(Strike(Filled.Id), [struck]).Select(o => o.Code));
    }

    [Theory]
    [InlineData("corrected", "cannot-be-corrected")] // it names the entry that both are about
    [InlineData("struck", "cannot-be-corrected")]
    public void A_correction_is_never_corrected_itself(string kind, string code) =>
        Assert.Equal([code], Mending.Objections(Correction(80), Known with { Kind = kind }).Select(o => o.Code));

    [Fact]
    public void Of_several_corrections_only_the_latest_can_be_struck()
    {
        var correction = Known with { Kind = "corrected" };

        Assert.Empty(Mending.Objections(Strike(Filled.Id), [correction]));
        Assert.Equal(
            ["not-the-latest"],
            Mending.Objections(Strike(Filled.Id), [correction with { IsReplaced = true }]).Select(o => o.Code)
        );
    }

    [Fact]
    public void A_strike_is_never_struck() =>
        Assert.Equal(
            ["cannot-be-struck"],
            Mending.Objections(Strike(Filled.Id), [Known with { Kind = "struck" }]).Select(o => o.Code)
        );

    [Fact]
    public void Both_need_a_reason()
    {
        Assert.Equal(["no-reason"], (Correction(80) with { Reason = "" }).JudgedOn(TheFloor()).Codes());
        Assert.Equal(["no-reason"], (Strike(Filled.Id) with { Reason = "" }).JudgedOn(TheFloor()).Codes());
        Assert.Equal(["nothing-to-strike"], Strike().JudgedOn(TheFloor()).Codes());
    }

    [Fact]
    public void What_replaces_an_entry_is_an_entry_of_the_floor() =>
        Assert.Equal(
            ["not-a-correction"],
            new Corrected(Filled.Id, Strike(Filled.Id), "typo").JudgedOn(TheFloor()).Codes()
        );

    [Fact]
    public void A_correction_stands_at_its_own_time_under_the_first_id()
    {
        var log = AsItStands.Of([(1, Filled), (2, On(2, new Vented(K3.Id))), (3, Correction(80, day: 3))]).ToArray();

        Assert.Equal([typeof(Vented), typeof(Filled)], log.Select(entry => entry.GetType()));
        Assert.Equal((Filled.Id, Litres(80), Day(3)), (log[1].Id, ((Filled)log[1]).Volume, log[1].At));
    }

    [Fact]
    public void The_latest_correction_counts_and_striking_it_restores_the_one_before()
    {
        var (first, second) = (Correction(80), Correction(70));

        Assert.Equal([Litres(70)], Volumes((1, Filled), (2, first), (3, second)));
        Assert.Equal([Litres(80)], Volumes((1, Filled), (2, first), (3, second), (4, Strike(second.Id))));
        Assert.Equal([Litres(90)], Volumes((1, Filled), (2, first), (3, Strike(first.Id))));
    }

    [Fact]
    public void Striking_an_entry_strikes_it_with_all_its_corrections() =>
        Assert.Empty(Volumes((1, Filled), (2, Correction(80)), (3, Strike(Filled.Id))));

    [Fact]
    public void Entries_of_one_moment_stand_in_the_order_of_the_log()
    {
        var (vented, opened) = (On(1, new Vented(K3.Id)), On(1, new Opened(K3.Id)));

        Assert.Equal([vented.Id, opened.Id], AsItStands.Of([(8, opened), (7, vented)]).Select(entry => entry.Id));
    }

    [Fact]
    public void A_later_entry_that_becomes_impossible_is_named_up_to_five()
    {
        var later = Enumerable
            .Range(2, 7)
            .Select(LogEntry (day) => On(day, new Vented(K3.Id)))
            .Select(entry => (entry, (Listed<Objection>)[Objection.Impossible("no-such-beer")]))
            .ToArray();

        var objection = Assert.Single(Afterwards.Objections(later));

        Assert.Equal(Level.Impossible, objection.Level);
        Assert.Equal(new("count", 7), objection.Numbers[2]);
        Assert.Equal(5, ((string)objection.Numbers[3].Value!).Split(' ').Length);
    }

    [Fact]
    public void New_stops_and_cautions_of_later_entries_undo_nothing() =>
        Assert.Empty(
            Afterwards.Objections([(Filled, [Objection.Stop("not-sanitized"), Objection.HardStop("vent-closed")])])
        );

    [Fact]
    public void What_a_later_entry_heard_when_it_was_judged_is_not_new()
    {
        var discarded = On(3, new Domain.Yeast.CultureDiscarded(Slurry.Id, "smelt of rubber"));
        var twice = TheFloor().After(On(2, discarded));

        Assert.Equal(["culture-discarded"], Afterwards.Anew(discarded, twice, []).Select(o => o.Code));
        Assert.Empty(Afterwards.Anew(discarded, twice, [Objection.Impossible("culture-discarded")]));
    }

    private static IEnumerable<UnitsNet.Volume> Volumes(params (long Seq, LogEntry Entry)[] log) =>
        AsItStands.Of(log).OfType<Filled>().Select(filled => filled.Volume);

    private static Corrected Correction(double litres, double day = 1) =>
        On(4, new Corrected(Filled.Id, Filled with { Volume = Litres(litres), At = Day(day) }, "misread the level"));

    private static Struck Strike(params ReadOnlySpan<Guid> entries) =>
        On(5, new Struck([.. entries], "never happened"));
}
