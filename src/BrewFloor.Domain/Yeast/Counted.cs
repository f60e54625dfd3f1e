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
    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Culture(CultureId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
