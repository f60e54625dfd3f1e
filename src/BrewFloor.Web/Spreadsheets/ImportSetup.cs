using System.Globalization;
using System.Text;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Web.Account;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using CsvHelper;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What the pages of imports are made of, and the templates they hand out.</summary>
internal static class ImportSetup
{
    /// <summary>Where a spreadsheet is sent to. What is somewhat too large still comes through, to be answered on the page.</summary>
    public static readonly (string Address, long Largest) Upload = ("/import", 4 * SheetLimits.Bytes);

    public static IServiceCollection AddImport(this IServiceCollection services) => services.AddScoped<SheetJudging>();

    /// <summary>A CSV with every column's name in our own words, the reader's units, and one invented row.</summary>
    public static void MapTemplates(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/import/template/{kind}",
                (string kind, Wording wording) =>
                    Enum.TryParse<SheetKind>(kind, ignoreCase: true, out var known) && Enum.IsDefined(known)
                        ? Results.File(
                            [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(Template(known, wording))],
                            "text/csv",
                            $"{known.ToString().ToLowerInvariant()}.csv"
                        )
                        : Results.NotFound()
            )
            .RequireAuthorization(Policies.Brewer);

    internal static string Template(SheetKind kind, Wording wording)
    {
        var fields = SheetFields.Of(kind, wording);
        var example = SheetRows.Of(kind).Example;
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = new CsvWriter(text, CultureInfo.InvariantCulture))
        {
            foreach (var field in fields.All)
            {
                csv.WriteField(Header(fields, field));
            }

            csv.NextRecord();
            foreach (var field in fields.All)
            {
                csv.WriteField(example.GetValueOrDefault(field.Name, ""));
            }

            csv.NextRecord();
        }

        return text.ToString();
    }

    // The example's figures are metric, so its header says so, whatever the reader reads in.
    private static string Header(SheetFields fields, Field field) =>
        field is QuantityField quantity
            ? $"{fields.Called(field)} ({UnitPart.SymbolsOf(quantity.Measure)[0]})"
            : fields.Called(field);
}
