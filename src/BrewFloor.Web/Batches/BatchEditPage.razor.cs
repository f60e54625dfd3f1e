using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Store.Batches;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Account;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Batches;

/// <summary>What a batch is called and what is planned for it.</summary>
public sealed partial class BatchEditPage(
    Wording wording,
    FloorReader reader,
    BatchBook book,
    NavigationManager navigation
)
{
    private Batch? _batch;
    private IReadOnlyList<Field> _fields = [];

    [Parameter]
    public int Number { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        if (await reader.BatchAsync(Number, Http.RequestAborted) is not { } view)
        {
            navigation.NotFound();
            return;
        }

        _batch = view.Floor.Batches[0].Thing;
        _fields =
        [
            new TextField("name") { IsRequired = true, Start = _batch.Name },
            new TextField("style") { Start = _batch.Style },
            new ChoiceField("beer", wording.Choices<BeerKind>()) { IsRequired = true, Start = _batch.Kind.ToString() },
            new QuantityField("limit", Measure.Gravity)
            {
                Hint = "hint.limit",
                Start = _batch.LimitOfAttenuation?.Value.ToString("0.000", CultureInfo.InvariantCulture),
                StartUnit = "SG",
            },
            new FlagField("limit-forced") { Start = _batch.IsLimitForced ? "true" : null },
            new QuantityField("gas-wanted", Measure.CarbonDioxide)
            {
                Hint = "hint.gas-wanted",
                Start = _batch.CarbonDioxideWanted?.Volumes.ToString("0.0#", CultureInfo.InvariantCulture),
                StartUnit = "vol",
            },
            new TextField("colour")
            {
                IsNumber = true,
                Start = _batch.ColourEbc?.ToString("0.#", CultureInfo.InvariantCulture),
            },
            new FlagField("harvest-planned") { Start = _batch.HarvestPlanned ? "true" : null },
            new FlagField("hops-while-fermenting") { Start = _batch.DryHopsDuringFermentation ? "true" : null },
        ];
    }

    private Func<Task<Edited>> Save(FormReader said, int readAt)
    {
        var batch = _batch! with
        {
            Version = readAt,
            Name = said.RequiredText("name"),
            Style = said.Text("style"),
            Kind = said.Choice<BeerKind>("beer"),
            LimitOfAttenuation = ReadLimit(said),
            IsLimitForced = said.Flag("limit-forced"),
            CarbonDioxideWanted = said.CarbonDioxideOrNone("gas-wanted"),
            ColourEbc = ReadColour(said),
            HarvestPlanned = said.Flag("harvest-planned"),
            DryHopsDuringFermentation = said.Flag("hops-while-fermenting"),
        };
        return () => book.EditAsync(batch, Policies.AuthorOf(Http.User), Http.RequestAborted);
    }

    private static SpecificGravity? ReadLimit(FormReader said)
    {
        var limit = said.SpecificGravityOrNone("limit");
        if (limit is null && said.Flag("limit-forced") && said.Text("limit").Length == 0)
        {
            said.Refuse("limit", new Refusal("missing", "limit", "", ""));
        }

        return limit;
    }

    private static double? ReadColour(FormReader said)
    {
        var colour = said.FigureOrNone("colour");
        if (colour is < 0 or > 200)
        {
            said.Refuse("colour", new Refusal("out-of-range", "colour", "0", "200", "EBC"));
        }

        return colour;
    }
}
