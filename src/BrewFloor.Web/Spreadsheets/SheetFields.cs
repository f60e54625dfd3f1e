using BrewFloor.Store.Spreadsheets;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What a spreadsheet's columns can be: the fields of the forms that ask for the same things one by one.</summary>
public sealed class SheetFields
{
    private const string Alone = "sheet."; // what it is called where it stands alone, without the form around it
    private readonly Wording _wording;

    private SheetFields(Wording wording, IEnumerable<Field> fields)
    {
        _wording = wording;
        All = [.. fields.Where(field => field is not RowsField).Select(Labelled)];
    }

    public IReadOnlyList<Field> All { get; }

    public static SheetFields Of(SheetKind kind, Wording wording) => new(wording, SheetRows.Of(kind).Fields(wording));

    public Field? Find(string? name) =>
        All.FirstOrDefault(field => string.Equals(field.Name, name, StringComparison.Ordinal));

    public string Called(Field field) => _wording.Entry(field.Label);

    /// <summary>By its name; what is no field is called what it is.</summary>
    public string Called(string name) => Find(name) is { } field ? Called(field) : name;

    private Field Labelled(Field field) =>
        _wording.HasEntry(Alone + field.Name) ? field with { Label = Alone + field.Name } : field;
}
