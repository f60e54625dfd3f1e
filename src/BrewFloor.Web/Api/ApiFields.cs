using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using UnitsNet;

namespace BrewFloor.Web.Api;

/// <summary>A field of a record, as it is stored and as programs write it.</summary>
/// <param name="Name">Without the unit: a quantity brings its own.</param>
/// <param name="Stored">The key inside, with the unit.</param>
internal sealed record ApiField(string Name, string Stored, Type Type, bool IsRequired)
{
    /// <summary>What it points to, where it is the id of a tank, batch, culture or item.</summary>
    public SubjectKind? PointsTo { get; init; }

    /// <summary>The name under which it takes a code or a number in place of the id: "tank" for "tank_id".</summary>
    public string Spoken => Name[..^"_id".Length];
}

/// <summary>The fields of every record that programs see, from how it is stored.</summary>
internal static class ApiFields
{
    // Common to all entries, or filled in by the store: nobody sends them as part of a payload.
    private static readonly HashSet<string> NotOfPayload = new(StringComparer.Ordinal)
    {
        "id",
        "at",
        "sent_at",
        "done_by",
        "note",
        "done_anyway",
        "typed",
        "touched",
    };

    private static readonly ConcurrentDictionary<Type, ApiField[]> Known = new();

    /// <summary>Empty for what isn't written as an object.</summary>
    public static IReadOnlyList<ApiField> Of(Type type) => Known.GetOrAdd(type, Read);

    public static bool AreIn(Type type) =>
        FloorJson.Options.GetTypeInfo(type).Kind is JsonTypeInfoKind.Object && !type.IsAbstract;

    private static ApiField[] Read(Type type)
    {
        var isEntry = type.IsAssignableTo(typeof(LogEntry));
        return AreIn(type)
            ?
            [
                .. FloorJson
                    .Options.GetTypeInfo(type)
                    .Properties.Where(property => !isEntry || !NotOfPayload.Contains(property.Name))
                    .Select(property => Field(property, type, isEntry)),
            ]
            : [];
    }

    private static ApiField Field(JsonPropertyInfo property, Type owner, bool isEntry)
    {
        var bare = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        return new(
            NameOf(property.Name, bare, isEntry),
            property.Name,
            property.PropertyType,
            IsRequired(property, owner)
        )
        {
            PointsTo = bare == typeof(Guid) ? PointsTo(property.Name) : null,
        };
    }

    private static string NameOf(string stored, Type bare, bool isEntry) =>
        isEntry && stored is "kind" ? JsonNamingPolicy.SnakeCaseLower.ConvertName(bare.Name) // "kind" is the entry's own
        : bare != typeof(Duration) && FloorJson.UnitOf(bare) is { } unit ? stored[..^(unit.Length + 1)]
        : stored;

    private static bool IsRequired(JsonPropertyInfo property, Type owner) =>
        property.IsRequired
        || (
            !Lists.Are(property.PropertyType)
            && (
                owner.IsValueType
                    ? IsOfPrimaryConstructor(property, owner)
                    : property.AssociatedParameter is { HasDefaultValue: false, IsNullable: false }
            )
        );

    // The reader makes a struct empty and sets its properties: what its constructor asks for, it doesn't know.
    private static bool IsOfPrimaryConstructor(JsonPropertyInfo property, Type owner) =>
        Nullable.GetUnderlyingType(property.PropertyType) is null
        && property.AttributeProvider is MemberInfo member
        && owner
            .GetConstructors()
            .SelectMany(constructor => constructor.GetParameters())
            .Any(parameter => string.Equals(parameter.Name, member.Name, StringComparison.Ordinal));

    private static SubjectKind? PointsTo(string stored) =>
        stored switch
        {
            "tank_id" or "from_id" or "to_id" => SubjectKind.Tank,
            "batch_id" => SubjectKind.Batch,
            "culture_id" => SubjectKind.Culture,
            "item_id" => SubjectKind.Item,
            _ => null,
        };
}
