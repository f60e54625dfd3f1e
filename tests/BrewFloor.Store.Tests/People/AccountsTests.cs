using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Store.Tests.People;

public sealed class AccountsTests(TestServer server) : IAsyncLifetime
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private Accounts Accounts => new(_floor);

    private Tokens Tokens => new(_floor);

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task A_name_is_one_persons_whatever_the_case()
    {
        var ann = await Accounts.AddAsync("Ann", Role.Owner, "hash", mustChange: true, Now, Stop);

        Assert.Null(await Accounts.AddAsync("ANN ", Role.Helper, passwordHash: null, mustChange: false, Now, Stop));
        Assert.Equal(ann, await Accounts.ByNameAsync(" ann", Stop));
    }

    [Fact]
    public async Task Of_tries_at_once_five_go_through_and_one_that_works_lets_all_be_forgotten()
    {
        var ann = (await Accounts.AddAsync("Ann", Role.Owner, "hash", mustChange: false, Now, Stop))!;
        var lockout = new Lockout(After: 5, Until: Now.AddMinutes(5), ForgetBefore: Now.AddMinutes(-15));

        var tries = await Task.WhenAll(
            Enumerable.Range(0, 20).Select(_ => Accounts.BeginTryAsync(ann.Id, Now, lockout, Stop))
        );
        Assert.Equal(5, tries.Count(until => until is null));
        Assert.All(tries.Where(until => until is not null), until => Assert.Equal(Now.AddMinutes(5), until));

        await Accounts.SignedInAsync(ann.Id, Stop);
        Assert.Equal(ann, await Accounts.ByIdAsync(ann.Id, Stop));
    }

    [Fact]
    public async Task A_new_password_or_role_ends_older_sign_ins()
    {
        var ann = (await Accounts.AddAsync("Ann", Role.Owner, "hash", mustChange: true, Now, Stop))!;

        await Accounts.SetPasswordAsync(ann.Id, "other", mustChange: false, Stop);
        var changed = (await Accounts.ByIdAsync(ann.Id, Stop))!;
        await Accounts.AddAsync("Bo", Role.Owner, "hash", mustChange: false, Now, Stop); // somebody must stay
        await Accounts.SetRoleAsync(ann.Id, Role.Viewer, isActive: false, Stop);
        var left = (await Accounts.ByIdAsync(ann.Id, Stop))!;

        Assert.Equal(3, new HashSet<Guid> { ann.SecurityStamp, changed.SecurityStamp, left.SecurityStamp }.Count);
        Assert.Equal(("other", false), (changed.PasswordHash, changed.MustChangePassword));
        Assert.Equal((Role.Viewer, false), (left.Role, left.IsActive));
    }

    [Fact]
    public async Task A_token_is_shown_once_and_known_by_its_hash_until_it_is_revoked()
    {
        var (token, secret) = (await Tokens.AddAsync("thermometer", ["log"], by: null, Now, Stop))!.Value;

        Assert.Equal(token, await Tokens.VerifyAsync(secret, Stop));
        Assert.Null(await Tokens.VerifyAsync(secret + "x", Stop));
        Assert.Equal(
            0L,
            await _floor.AskAsync<long>(
                "SELECT count(*) FROM tokens t WHERE position(convert_to($1, 'UTF8') in hash) > 0 OR t::text LIKE '%' || $1 || '%'",
                secret
            )
        );

        await Tokens.RevokeAsync(token.Id, Now, Stop);
        Assert.Null(await Tokens.VerifyAsync(secret, Stop));
    }

    [Fact]
    public async Task A_name_is_one_tokens_until_it_is_revoked()
    {
        var (token, _) = (await Tokens.AddAsync("thermometer", ["log"], by: null, Now, Stop))!.Value;

        Assert.Null(await Tokens.AddAsync("Thermometer ", ["log"], by: null, Now, Stop));
        await Tokens.RevokeAsync(token.Id, Now, Stop);
        Assert.NotNull(await Tokens.AddAsync("Thermometer", ["log"], by: null, Now, Stop));
    }
}
