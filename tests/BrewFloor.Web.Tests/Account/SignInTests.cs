using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Web.Account;
using BrewFloor.Web.Tests.Api;

namespace BrewFloor.Web.Tests.Account;

public sealed class SignInTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task Who_signs_in_is_led_back_to_the_page_they_asked_for_and_never_elsewhere()
    {
        var asked = (await app.Stranger().GetAsync("/tanks/K3", FloorApp.Stop)).Headers.Location!.PathAndQuery;
        Assert.StartsWith("/sign-in?returnUrl=%2Ftanks%2FK3", asked, StringComparison.Ordinal);

        Assert.Equal("/tanks/K3", await LedToAsync(asked));
        Assert.Equal("/", await LedToAsync("/sign-in?returnUrl=%2F%2Fevil.example"));
    }

    [Fact]
    public async Task A_wrong_password_and_an_unknown_name_hear_the_same()
    {
        var person = await PersonAsync("Known");
        var known = await TryAsync(app.Stranger("127.0.2.3"), person.Name, "wrong");

        Assert.Equal(await WrongAsync("127.0.2.3"), (await known.PageAsync()).QuerySelector("[role=alert]").Words());
    }

    [Fact]
    public async Task A_new_password_ends_what_was_signed_in_under_the_old_one()
    {
        var person = await PersonAsync("Changed");
        var browser = app.As(person);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/more", FloorApp.Stop)).StatusCode);

        await app.Get<Accounts>().SetPasswordAsync(person.Id, "another", mustChange: false, FloorApp.Stop);

        Assert.Equal(HttpStatusCode.Found, (await app.As(person).GetAsync("/more", FloorApp.Stop)).StatusCode);
    }

    [Fact]
    public async Task A_one_use_password_opens_nothing_but_its_own_change()
    {
        var person = await app.PersonAsync("Fresh", Role.Brewer, Hash, mustChange: true);
        var browser = app.As(person);

        Assert.Equal("/me/password", (await browser.GetAsync("/jobs", FloorApp.Stop)).Headers.Location?.OriginalString);
        await (await browser.GetAsync("/api/v1/tanks", FloorApp.Stop)).HearAsync(HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task A_form_from_another_site_signs_nobody_out_and_a_form_of_ours_does()
    {
        var browser = app.As(Role.Helper);
        var forged = await browser.PostAsync("/sign-out", new FormUrlEncodedContent([]), FloorApp.Stop);

        Assert.Equal(HttpStatusCode.BadRequest, forged.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/more", FloorApp.Stop)).StatusCode);

        var page = await browser.PageAsync("/more");
        var ours = page.Forms.Single(form => form.GetAttribute("action") is "sign-out");
        var token = ours.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        await browser.PostAsync(
            "/sign-out",
            new FormUrlEncodedContent([KeyValuePair.Create("__RequestVerificationToken", token)]),
            FloorApp.Stop
        );

        Assert.Equal(HttpStatusCode.Found, (await browser.GetAsync("/more", FloorApp.Stop)).StatusCode);
    }

    private string Hash => app.Get<Passwords>().Hash(FloorApp.Password);

    private Task<Person> PersonAsync(string name) => app.PersonAsync(name, Role.Helper, Hash);

    private async Task<string?> LedToAsync(string path)
    {
        var browser = app.Stranger("127.0.2.6");
        var answer = await browser.SendFormAsync(
            path,
            "sign-in",
            ("Input.Name", app.Person(Role.Viewer).Name),
            ("Input.Password", FloorApp.Password)
        );
        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        return answer.Headers.Location?.PathAndQuery;
    }

    private static Task<HttpResponseMessage> TryAsync(HttpClient browser, string name, string password) =>
        browser.SendFormAsync("/sign-in", "sign-in", ("Input.Name", name), ("Input.Password", password));

    private async Task<string> WrongAsync(string from) =>
        (await (await TryAsync(app.Stranger(from), "Nobody", "wrong")).PageAsync())
            .QuerySelector("[role=alert]")
            .Words();
}
