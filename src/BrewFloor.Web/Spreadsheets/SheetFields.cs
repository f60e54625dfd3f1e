using BrewFloor.Store.Spreadsheets;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What a spreadsheet's columns can be: the fields of the forms that ask for the same things one by one.</summary>
internal sealed class SheetFields
{
    private readonly Wording _wording;

    private SheetFields(Wording wording, IEnumerable<Field> fields) =>
        (_wording, All) = (wording, [.. fields.Where(field => field is not RowsField)]);

    public IReadOnlyList<Field> All { get; }

    public static SheetFields Of(SheetKind kind, Wording wording) =>
        new(wording, SheetRows.Of(kind).Fields(wording));

    public Field? Find(string? name) =>
        All.FirstOrDefault(field => string.Equals(field.Name, name, StringComparison.Ordinal));

    /// <summary>What it is called where it stands alone, without the form around it.</summary>
    public string Called(Field field) =>
        _wording.HasEntry("sheet." + field.Name)
            ? _wording.Entry("sheet." + field.Name)
            : _wording.Entry(field.Label);

    public string Called(string name) => Find(name) is { } field ? Called(field) : name;
}
