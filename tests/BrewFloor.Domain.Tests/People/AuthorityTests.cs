using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.People;

public class AuthorityTests
{
    private static readonly Guid Me = Guid.CreateVersion7();
    private static readonly Guid SomebodyElse = Guid.CreateVersion7();
    private static readonly DateTimeOffset Now = Day(100);

    [Theory]
    [InlineData(Role.Helper, false, 24, true)] // the last moment counts
    [InlineData(Role.Helper, false, 24.01, false)]
    [InlineData(Role.Brewer, false, 30 * 24, true)]
    [InlineData(Role.Brewer, false, (30 * 24) + 0.01, false)]
    [InlineData(Role.Owner, false, 3000 * 24, true)] // any date
    [InlineData(Role.Owner, true, 24, true)]
    [InlineData(Role.Owner, true, 24.01, false)] // a token never reaches further, whoever made it
    public void How_far_back_each_may_write(Role role, bool isToken, double hours, bool may) =>
        Assert.Equal(
            may ? [] : ["too-far-back"],
            Codes(role, isToken, new Vented(K3.Id) { At = Now.AddHours(-hours) })
        );

    [Fact]
    public void Too_far_back_comes_with_both_times() =>
        Assert.Equal(
            [Objection.Impossible("too-far-back", new("at", Day(98)), new("earliest", Day(99)))],
            Authority.Objections(new(Me, Role.Helper), new Vented(K3.Id) { At = Day(98) }, Now, Rules, [])
        );

    [Fact]
    public void A_viewer_logs_nothing() =>
        Assert.Equal(["may-not-log"], Codes(Role.Viewer, false, new Vented(K3.Id) { At = Now }));

    [Theory]
    [InlineData(Role.Helper, false, new[] { "brewers-only" })]
    [InlineData(Role.Brewer, false, new string[0])]
    [InlineData(Role.Owner, true, new[] { "not-by-token" })]
    public void Brewers_allow_and_answer_and_a_token_never_does(Role role, bool isToken, string[] codes)
    {
        Assert.Equal(
            codes,
            Codes(role, isToken, new Allowed(K3.Id, "filled", ["not-sanitized"], Now, "steamed") { At = Now })
        );
        Assert.Equal(codes, Codes(role, isToken, new Answered(Guid.Empty, "all right") { At = Now }));
    }

    [Theory]
    [InlineData(Role.Helper, true, 24, new string[0])]
    [InlineData(Role.Helper, true, 25, new[] { "too-far-back" })]
    [InlineData(Role.Helper, false, 1, new[] { "not-your-entry" })]
    [InlineData(Role.Brewer, false, 30 * 24, new string[0])] // anyone's
    [InlineData(Role.Brewer, false, 31 * 24, new[] { "too-far-back" })]
    [InlineData(Role.Owner, false, 3000 * 24, new string[0])]
    public void Who_strikes_and_corrects_what(Role role, bool isMine, double hours, string[] codes)
    {
        var old = new Vented(K3.Id) { Id = Guid.CreateVersion7(), At = Now.AddHours(-hours) };
        Logged[] mended = [new(old.Id, "vented", isMine ? Me : SomebodyElse, old.At)];

        Assert.Equal(codes, Codes(role, false, new Struck([old.Id], "typo") { At = Now }, mended));
        Assert.Equal(codes, Codes(role, false, new Corrected(old.Id, old, "typo") { At = Now }, mended));
    }

    [Fact]
    public void A_token_strikes_and_corrects_nothing_not_even_its_own() =>
        Assert.Equal(
            ["not-by-token"],
            Codes(
                Role.Helper,
                true,
                new Struck([Guid.Empty], "typo") { At = Now },
                [new(Guid.Empty, "vented", Me, Now)]
            )
        );

    [Fact]
    public void Nobody_reaches_further_back_by_way_of_a_correction()
    {
        var old = new Vented(K3.Id) { Id = Guid.CreateVersion7(), At = Now.AddHours(-1) };
        var moved = new Corrected(old.Id, old with { At = Now.AddHours(-30) }, "it was yesterday") { At = Now };

        Assert.Equal(["too-far-back"], Codes(Role.Helper, false, moved, [new(old.Id, "vented", Me, old.At)]));
    }

    private static IEnumerable<string> Codes(Role role, bool isToken, LogEntry entry, params Logged[] mended) =>
        Authority.Objections(new(Me, role, isToken), entry, Now, Rules, mended).Select(o => o.Code);
}
