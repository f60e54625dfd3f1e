namespace BrewFloor.Domain.Log;

/// <summary>A brewer answers for what was done anyway.</summary>
/// <param name="Entry">The entry it is about.</param>
/// <param name="Words">What came of it.</param>
public sealed record Answered(Guid Entry, string Words) : LogEntry
{
    /// <summary>The subjects of that entry; the store fills them in.</summary>
    public Listed<Subject> Touched { get; init; }

    public override IEnumerable<Subject> Subjects => Touched;

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
