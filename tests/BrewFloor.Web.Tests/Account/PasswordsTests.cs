using BrewFloor.Web.Account;

namespace BrewFloor.Web.Tests.Account;

public class PasswordsTests
{
    private readonly Passwords _passwords = new();

    [Fact]
    public void The_right_password_fits_its_hash_and_no_other_does()
    {
        var hash = _passwords.Hash("wet boots, dry hops");

        Assert.True(_passwords.Fits(hash, "wet boots, dry hops"));
        Assert.False(_passwords.Fits(hash, "wet boots, dry hop"));
    }

    [Fact]
    public void A_hash_says_sha512_with_220000_rounds()
    {
        // The framework's format 3: marker, function, rounds, each big-endian.
        var hash = Convert.FromBase64String(_passwords.Hash("wet boots, dry hops"));

        Assert.Equal((1, 2, 220_000), (hash[0], hash[4], (hash[5] << 24) | (hash[6] << 16) | (hash[7] << 8) | hash[8]));
    }

    [Fact]
    public void Nobody_has_no_password_that_fits() => Assert.False(_passwords.Fits(hash: null, "wet boots, dry hops"));

    [Fact]
    public void One_use_passwords_differ_and_are_long_enough()
    {
        Assert.NotEqual(Passwords.MakeOne(), Passwords.MakeOne());
        Assert.True(Passwords.MakeOne().Length >= Passwords.Shortest);
    }
}
