using BrewFloor.Domain.Log;

namespace BrewFloor.Store.Log;

/// <summary>The stored names of what an entry may be about, and the tables their rows are in.</summary>
internal static class SubjectKinds
{
    public static readonly (SubjectKind Kind, string Table)[] InLockOrder =
    [
        (SubjectKind.Tank, "tanks"),
        (SubjectKind.Batch, "batches"),
        (SubjectKind.Culture, "cultures"),
        (SubjectKind.Item, "items"),
    ];

    public static string NameOf(SubjectKind kind) =>
        kind switch
        {
            SubjectKind.Tank => "tank",
            SubjectKind.Batch => "batch",
            SubjectKind.Culture => "culture",
            SubjectKind.Item => "item",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind."),
        };

    public static SubjectKind Of(string name) =>
        name switch
        {
            "tank" => SubjectKind.Tank,
            "batch" => SubjectKind.Batch,
            "culture" => SubjectKind.Culture,
            "item" => SubjectKind.Item,
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such kind."),
        };
}
