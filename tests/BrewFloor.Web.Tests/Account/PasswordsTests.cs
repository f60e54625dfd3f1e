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

    [Theory]
    [InlineData(null, "password-short")]
    [InlineData("seven77", "password-short")]
    [InlineData("password1", "password-common")]
    [InlineData("Passw0rd", "password-common")]
    [InlineData("qwertyuiop", "password-common")]
    [InlineData("12345678", "password-common")]
    [InlineData("wiesenhall", "password-common")]
    [InlineData("wet boots and one phone", null)]
    [InlineData("kq7 vdmz x2", null)]
    public void Short_and_common_passwords_are_refused_and_names_are_common(string? password, string? problem) =>
        Assert.Equal(problem, PasswordProblem.With(password, "Olga", "Wiesenhall"));

    [Theory]
    [InlineData(Passwords.Longest, null)]
    [InlineData(Passwords.Longest + 1, "password-long")]
    public void A_long_password_is_taken_up_to_a_length(int length, string? problem) =>
        Assert.Equal(problem, PasswordProblem.With(string.Concat(Enumerable.Repeat("hop vine ", 30))[..length]));

    [Theory]
    [InlineData("Mozilla/5.0 (Linux; Android 16) AppleWebKit/537.36 Mobile Safari/537.36", Devices.Phone)]
    [InlineData("Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36", Devices.Computer)]
    [InlineData("curl/8", "")]
    [InlineData("", "")]
    public void A_session_says_what_kind_of_thing_it_is_on(string userAgent, string device) =>
        Assert.Equal(device, Devices.Of(userAgent));
}
