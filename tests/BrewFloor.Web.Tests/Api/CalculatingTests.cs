using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using BrewFloor.Brewing.Calculators;
using static BrewFloor.Web.Tests.Api.Talk;

namespace BrewFloor.Web.Tests.Api;

/// <summary>Calculators as programs use them.</summary>
public sealed class CalculatingTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task Every_calculator_is_listed_with_its_inputs_units_ranges_formula_and_sources()
    {
        using var program = await app.WithTokenAsync("read");

        var items = (await program.ReadAsync("/calculate"))["items"]!.AsArray();

        Assert.Equal(AllCalculators.ByName.Keys.Order(), items.Select(item => item.Text("name")).Order());
        Assert.All(
            items,
            item =>
            {
                Assert.NotEmpty(item!["sources"]!.AsArray());
                Assert.NotEmpty(item["formula"]!.AsArray());
                Assert.NotEmpty(item["inputs"]!.AsArray());
                Assert.NotEmpty(item.Text("accuracy"));
            }
        );
        var wort = (await program.ReadAsync("/calculate/slurry"))["inputs"]![0]!;
        Assert.Equal(
            ["L", "hL", "gal", "bbl", "mL"],
            wort["units"]!.AsArray().Select(unit => unit!.GetValue<string>())
        );
        Assert.Equal("L", wort["to"].Text("unit"));
    }

    [Fact]
    public async Task Every_calculator_computes_what_its_own_examples_give()
    {
        using var program = await app.WithTokenAsync("read");
        foreach (var calculator in AllCalculators.All)
        {
            var shown = await program.ReadAsync($"/calculate/{calculator.Name}");
            var given = new JsonObject(
                shown["inputs"]!
                    .AsArray()
                    .Where(input => input!["example"] is not null)
                    .Select(input => KeyValuePair.Create(input.Text("name"), input!["example"]?.DeepClone()))
            );

            var answer = await (await AskAsync(program, calculator.Name, given)).HearAsync(HttpStatusCode.OK);

            Assert.Equal(
                calculator.Answer(Given.NothingTo(calculator)).Value.Results.Select(result => result.Name),
                answer["results"]!.AsArray().Select(result => result.Text("name"))
            );
        }
    }

    [Fact]
    public async Task Units_are_the_programs_own_and_what_it_left_out_is_said_to_be_assumed()
    {
        using var program = await app.WithTokenAsync("read");

        var answer = await (
            await AskAsync(
                program,
                "slurry",
                new() { ["wort"] = Quantity(1, "hL"), ["original-gravity"] = Quantity(12, "°P") }
            )
        ).HearAsync(HttpStatusCode.OK);

        var slurry = answer["results"]![0]!;
        Assert.Equal(1.111, slurry["value"]!["value"]!.GetValue<double>(), 0.002);
        Assert.True(slurry["low"]!["value"]!.GetValue<double>() < 0.5);
        Assert.Equal("slurry-not-counted", answer["findings"]![0].Text("code"));
        Assert.True(answer["inputs"]!["viability"]!["assumed"]!.GetValue<bool>());
        Assert.False(answer["inputs"]!["wort"]!["assumed"]!.GetValue<bool>());
        Assert.Equal(100, answer["inputs"]!["wort"]!["value"]!["value"]!.GetValue<double>(), 1e-9);
    }

    [Theory]
    [InlineData("""{"wort": {"value": 20, "unit": "°C"}}""", "wort", "Known: L, hL, gal, bbl, mL")]
    [InlineData("""{"wort": 20}""", "wort", "Units known here: L, hL")]
    [InlineData("""{"wort": {"value": "x", "unit": "L"}}""", "wort", "number")]
    [InlineData("{}", "wort", "missing")]
    [InlineData("""{"malt": {"value": 1, "unit": "kg"}}""", "malt", "Known: wort, original-gravity")]
    [InlineData(
        """{"wort": {"value": 1, "unit": "L"}, "original-gravity": {"value": 99, "unit": "SG"}}""",
        "original-gravity",
        "From 1.0039 to 1.1787 SG"
    )]
    public async Task What_is_wrong_is_told_with_what_would_be_right(string body, string field, string told)
    {
        using var program = await app.WithTokenAsync("read");

        var problem = await (await AskAsync(program, "slurry", JsonNode.Parse(body)!.AsObject())).HearAsync(
            HttpStatusCode.BadRequest
        );

        Assert.Equal(field, problem.Text("field"));
        Assert.Contains(told, problem.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_arithmetic_refuses_names_the_input_in_the_unit_it_was_sent_in_or_the_number_on_the_way()
    {
        using var program = await app.WithTokenAsync("read");
        var gravities = new JsonObject
        {
            ["original-gravity"] = Quantity(1.04, "SG"),
            ["final-gravity"] = Quantity(1.05, "SG"),
        };
        var flow = new JsonObject(
            AllCalculators
                .ByName["spray-ball"]
                .Inputs.OfType<QuantityInput>()
                .Where(input => !input.HasUsual)
                .Select(input =>
                    KeyValuePair.Create<string, JsonNode?>(
                        input.Name,
                        Quantity(input.Name is "pump-flow" ? 30 : input.Start, input.Measure.First.Symbol)
                    )
                )
        );

        var about = await (await AskAsync(program, "alcohol", gravities)).HearAsync(HttpStatusCode.BadRequest);
        var between = await (await AskAsync(program, "spray-ball", flow)).HearAsync(HttpStatusCode.BadRequest);

        Assert.Equal("final-gravity", about.Text("field"));
        Assert.Contains("SG", about.Text("detail"), StringComparison.Ordinal);
        Assert.Contains("L/min", between.Text("detail"), StringComparison.Ordinal);
        await (await AskAsync(program, "horoscope", [])).HearAsync(HttpStatusCode.NotFound);
    }

    private static Task<HttpResponseMessage> AskAsync(HttpClient program, string name, JsonObject given) =>
        program.PostAsJsonAsync($"/api/v1/calculate/{name}", given, FloorApp.Stop);
}
