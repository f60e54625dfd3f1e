using System.Net;
using AngleSharp.Dom;
using BrewFloor.Brewing.Calculators;
using BrewFloor.Domain.People;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Tests.Calculators;

/// <summary>Pages of calculators, as a browser without script has them.</summary>
public sealed class CalculatorPageTests(FloorApp app) : IClassFixture<FloorApp>
{
    private static readonly Wording Words = Reader.Stranger;

    public static TheoryData<string> Names => [.. AllCalculators.All.Select(calculator => calculator.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Every_question_has_a_page_that_warns_first_asks_answers_and_says_how_it_computes(string name)
    {
        var calculator = AllCalculators.ByName[name];

        var page = await app.As(Role.Viewer).PageAsync($"/calculators/{name}");

        var said = page.QuerySelector("main")!.TextContent;
        Assert.All(calculator.Sources, source => Assert.Contains(source, said, StringComparison.Ordinal));
        Assert.All(calculator.Formula, line => Assert.Contains(line, said, StringComparison.Ordinal));
        Assert.All(calculator.Inputs, input => Assert.NotEmpty(page.QuerySelectorAll($"[name='{input.Name}']")));
        Assert.Empty(page.QuerySelectorAll(".wrong"));
        Assert.Equal(calculator.Plot is not null, page.QuerySelector(".chart") is not null);
        if (calculator.Cautions.Count > 0)
        {
            var (caution, form) = (page.QuerySelector(".hazard")!, page.QuerySelector("form[data-calculator]")!);
            Assert.True(caution.CompareDocumentPosition(form).HasFlag(DocumentPositions.Following));
        }
    }

    [Fact]
    public async Task The_address_holds_the_numbers_and_the_units()
    {
        var page = await app.As(Role.Viewer)
            .PageAsync("/calculators/slurry?wort=1&wort.unit=hL&original-gravity=12&original-gravity.unit=%C2%B0P");

        Assert.Equal("1", page.QuerySelector("[name=wort]")!.GetAttribute("value"));
        Assert.Equal("hL", page.QuerySelector("[name='wort.unit'] [selected]")!.GetAttribute("value"));
        Assert.StartsWith("1.11", page.QuerySelector("#calc-answer dd")!.TextContent.Trim(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_nobody_typed_is_said_to_be_assumed_and_what_somebody_typed_to_be_given()
    {
        var browser = app.As(Role.Viewer);

        var assumed = await browser.PageAsync("/calculators/slurry");
        var given = await browser.PageAsync("/calculators/slurry?slurry-density=900");

        Assert.Contains(Words["calc-origin-assumed"], Row(assumed, "input.slurry-density"), StringComparison.Ordinal);
        Assert.Contains(
            Words.Calculator("finding.slurry-not-counted"),
            assumed.QuerySelector("#calc-answer")!.TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains(Words["calc-origin-typed"], Row(given, "input.slurry-density"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_number_out_of_range_is_refused_below_its_field_in_its_own_unit_and_kept()
    {
        var page = await app.As(Role.Viewer)
            .PageAsync("/calculators/carbonation?temperature=120&temperature.unit=%C2%B0F&pressure-gauge=x");

        Assert.Equal("120", page.QuerySelector("[name=temperature]")!.GetAttribute("value"));
        Assert.Contains(
            "Between 32 and 104 °F",
            page.QuerySelector("#c-temperature-note")!.TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains(
            Words["refusal.not-a-number"],
            page.QuerySelector("#c-pressure-gauge-note")!.TextContent,
            StringComparison.Ordinal
        );
        Assert.Null(page.QuerySelector(".chart"));
    }

    [Fact]
    public async Task What_the_arithmetic_refuses_stands_below_the_field_it_is_about_or_as_a_sentence()
    {
        var browser = app.As(Role.Viewer);

        var field = await browser.PageAsync("/calculators/alcohol?original-gravity=1.040&final-gravity=1.050");
        var between = await browser.PageAsync("/calculators/spray-ball?pump-flow=30");

        Assert.Contains(
            "Between 0.995 and 1.0399 SG",
            field.QuerySelector("#c-final-gravity-note")!.TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains(
            Words.Calculator("through.flow"),
            between.QuerySelector("#calc-answer")!.TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_question_that_is_not_there_is_not_found() =>
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await app.As(Role.Viewer).GetAsync("/calculators/horoscope", FloorApp.Stop)).StatusCode
        );

    [Fact]
    public async Task Every_question_is_listed()
    {
        var page = await app.As(Role.Viewer).PageAsync("/calculators");

        Assert.Equal(
            AllCalculators.All.Select(calculator => $"calculators/{calculator.Name}").Order(),
            page.QuerySelectorAll("main a").Select(a => a.GetAttribute("href")!).Order()
        );
    }

    private static string Row(IParentNode page, string label) =>
        page.QuerySelectorAll("#calc-how .facts div")
            .First(row => row.TextContent.Contains(Words.Calculator(label), StringComparison.Ordinal))
            .TextContent;
}
