using BrewFloor.Domain;

namespace BrewFloor.Web.Api;

/// <summary>Which types are lists, and of what.</summary>
internal static class Lists
{
    public static bool Are(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Listed<>);

    public static Type ItemOf(Type list) => list.GetGenericArguments()[0];
}
