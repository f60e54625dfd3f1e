using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>Each column of a spreadsheet with what it means; and what no column says, to be said once for every row.</summary>
public sealed partial class SheetMatchPart(Wording wording)
{
    private const int Samples = 3;
    private const int LongestSample = 40;

    [Parameter, EditorRequired]
    public required SheetTable Table { get; set; }

    [Parameter, EditorRequired]
    public required SheetMatching Matching { get; set; }

    [Parameter, EditorRequired]
    public required SheetFields Fields { get; set; }

    private IEnumerable<(int Column, string Header, string Some)> Columns =>
        Enumerable
            .Range(0, Table.Columns)
            .Select(column => (column, Header(column), Some: string.Join(" · ", Texts(column).Take(Samples))))
            .Where(column => column.Some.Length > 0 || !Table.At(Table.Header, column.column).IsEmpty);

    private IEnumerable<Field> Free => Fields.All.Where(one => Matching.ColumnOf(one.Name) < 0);

    private IEnumerable<Field> Unmatched =>
        Free.OrderByDescending(one => one.IsRequired)
            .Select(one => MatchingForm.ForAll(one, wording["import-same-none"]));

    private IReadOnlyDictionary<string, StringValues> Everywhere => MatchingForm.Shown(Matching);

    private IReadOnlyList<string> Lacking =>
        [.. Free.Where(one => one.IsRequired && !Matching.Everywhere.ContainsKey(one.Name)).Select(Fields.Called)];

    private string Header(int column) =>
        Table.At(Table.Header, column) is { IsEmpty: false } header
            ? header.Text
            : wording["import-column", new Number("number", column + 1)];

    private bool HasWrittenDates(int column) =>
        Table.Below.Any(row => Table.At(row, column) is { IsEmpty: false, On: null });

    private IEnumerable<string> Texts(int column) =>
        Table
            .Below.Select(row => Table.At(row, column).Text)
            .Where(text => text.Length > 0)
            .Distinct(StringComparer.Ordinal)
            .Select(text => text.Length > LongestSample ? text[..LongestSample] + "…" : text);

    private static string Id(int column, string what) => $"c-{column}-{what}";
}
