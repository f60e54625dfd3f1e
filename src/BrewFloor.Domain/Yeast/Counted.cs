using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Yeast;

/// <summary>Cells counted under the microscope, living and dead by the stain.</summary>
/// <param name="CultureId">The culture.</param>
/// <param name="Squares">Large squares counted, 1 mm by 1 mm by 0.1 mm each (0.1 µL).</param>
/// <param name="Dilution">How many times the sample was diluted; 1: not.</param>
/// <param name="Live">Cells without colour.</param>
/// <param name="Dead">Cells that took the stain.</param>
public sealed record Counted(Guid CultureId, int Squares, double Dilution, int Live, int Dead) : LogEntry
{
    private const int MostCounts = 50; // a state stays small; the log keeps them all

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Culture(CultureId)];

    /// <summary>Cells of the culture itself in a millilitre of it; the sample's dilution is reckoned in.</summary>
    /// <remarks>
    /// A large square of the chamber is 1 mm by 1 mm and 0.1 mm deep: 0.1 µL, so that one cell in it is 10,000 in a
    /// millilitre (Neubauer chamber; the arithmetic of ASBC Yeast-4).
    /// </remarks>
    public double CellsPerMilliliter => (double)Cells / Squares * Dilution * SquaresPerMilliliter;

    private const double SquaresPerMilliliter = 1e4;

    private long Cells => (long)Live + Dead;

    private bool IsReadable => Squares >= 1 && Dilution >= 1 && Live >= 0 && Dead >= 0 && Cells > 0;

    public override IEnumerable<Objection> Objections(Floor before)
    {
        if (!IsReadable)
        {
            yield return Objection.Impossible("no-cells", new("cells", (int)Cells), new("squares", Squares));
        }
    }

    public override CultureState Change(CultureState culture, Listed<HandedOver> handed) =>
        IsReadable ? culture with { Counts = [.. culture.Counts.TakeLast(MostCounts - 1), Of(culture)] } : culture;

    // A pack is weighed: what was counted is what it was stirred into, not the pack.
    private Count Of(CultureState culture) =>
        new(Moment.Of(this), (double)Live / Cells, culture.Amount.IsMass ? null : CellsPerMilliliter);
}
