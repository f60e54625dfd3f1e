using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Store.Tests.People;

public sealed class InvitesTests(TestServer server) : IAsyncLifetime
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
    private readonly FreshFloor _floor = new(server);
    private Person _ann = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private Accounts Accounts => new(_floor);

    private Invites Invites => new(_floor);

    private Sessions Sessions => new(_floor);

    public async ValueTask InitializeAsync()
    {
        await _floor.InitializeAsync();
        _ann = (await Accounts.AddAsync("Ann", Role.Owner, "hash", mustChange: false, Now, Stop))!;
    }

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task Of_twenty_who_come_with_the_same_link_at_once_one_gets_in()
    {
        var (_, secret) = await Invites.MakeAsync("Bo", Role.Brewer, _ann.Id, Now, Stop);

        var uses = await Task.WhenAll(
            Enumerable.Range(0, 20).Select(i => Invites.UseAsync(secret, Newcomer($"Bo {i}"), Now, Stop))
        );

        Assert.Equal(Role.Brewer, Assert.Single(uses.OfType<InviteUse.Welcome>()).Person.Role);
        Assert.All(uses.OfType<InviteUse.No>(), no => Assert.IsType<InviteFound.Used>(no.Why));
        Assert.Equal(2, (await Accounts.AllAsync(Stop)).Count);
    }

    [Fact]
    public async Task A_link_is_good_for_three_days_and_not_a_moment_longer()
    {
        var (invite, secret) = await Invites.MakeAsync("Bo", Role.Helper, _ann.Id, Now, Stop);

        var (just, after) = (invite.ExpiresAt.AddMilliseconds(-1), invite.ExpiresAt);
        Assert.IsType<InviteFound.Good>(await Invites.FindAsync(secret, just, Stop));
        Assert.Equal(new InviteFound.Expired(after), await Invites.FindAsync(secret, after, Stop));
        Assert.IsType<InviteUse.No>(await Invites.UseAsync(secret, Newcomer("Bo"), after, Stop));
        Assert.Equal(TimeSpan.FromDays(3), invite.ExpiresAt - Now);
    }

    [Fact]
    public async Task A_link_that_was_taken_back_is_not_known_any_more()
    {
        var (invite, secret) = await Invites.MakeAsync("Bo", Role.Helper, _ann.Id, Now, Stop);

        await Invites.RevokeAsync(invite.Id, Now, Stop);

        Assert.IsType<InviteFound.Unknown>(await Invites.FindAsync(secret, Now, Stop));
        Assert.Empty(await Invites.OpenAsync(Now, Stop));
    }

    [Fact]
    public async Task A_taken_name_leaves_the_link_good()
    {
        var (_, secret) = await Invites.MakeAsync("Bo", Role.Helper, _ann.Id, Now, Stop);

        Assert.IsType<InviteUse.NameTaken>(await Invites.UseAsync(secret, Newcomer("ann"), Now, Stop));
        Assert.IsType<InviteUse.Welcome>(await Invites.UseAsync(secret, Newcomer("Bo"), Now, Stop));
    }

    [Fact]
    public async Task The_last_owner_can_neither_step_down_nor_go_and_of_two_who_step_down_at_once_one_stays()
    {
        Assert.False(await Accounts.SetRoleAsync(_ann.Id, Role.Brewer, isActive: true, Stop));
        Assert.False(await Accounts.SetRoleAsync(_ann.Id, Role.Owner, isActive: false, Stop));
        var bo = (await Accounts.AddAsync("Bo", Role.Owner, "hash", mustChange: false, Now, Stop))!;

        var stepped = await Task.WhenAll(
            Accounts.SetRoleAsync(_ann.Id, Role.Brewer, isActive: true, Stop),
            Accounts.SetRoleAsync(bo.Id, Role.Brewer, isActive: true, Stop)
        );

        Assert.Single(stepped, true);
        Assert.Single(await Accounts.AllAsync(Stop), person => person.Role is Role.Owner);
    }

    [Fact]
    public async Task A_session_that_was_ended_is_never_seen_again_and_the_others_stay()
    {
        var phone = await Sessions.BeginAsync(_ann.Id, "Firefox on Android", "192.0.2.7", Now, Stop);
        var desk = await Sessions.BeginAsync(_ann.Id, "Chrome on Linux", "192.0.2.8", Now, Stop);

        await Sessions.EndAsync(_ann.Id, phone, but: null, Now, Stop);

        Assert.False(await Sessions.SeenAsync(phone, _ann.Id, "192.0.2.7", Now, Stop));
        Assert.True(await Sessions.SeenAsync(desk, _ann.Id, "192.0.2.9", Now.AddMinutes(1), Stop));
        var left = Assert.Single(await Sessions.OfAsync(_ann.Id, Now, Stop));
        Assert.Equal(("Chrome on Linux", "192.0.2.9", Now.AddMinutes(1)), (left.Device, left.Address, left.SeenAt));
    }

    private static NewPerson Newcomer(string name) => new(Guid.CreateVersion7(), name, "hash");
}
